import { describe, expect, it } from 'vitest'
import { MM_PER_INCH, rainOver, WEEKLY_NEED_MM } from '../../../src/season/index.js'

describe('the rule of an inch a week', () => {
  // "About 1 inch of water a week": tip sheet of the United States Department of Agriculture, widely reprinted.
  it('is an inch in round millimetres, and grows with the days', () => {
    expect(Math.round(MM_PER_INCH)).toBe(WEEKLY_NEED_MM)
    expect(rainOver(new Map(), '2026-06-30', 7).needMm).toBe(25)
    expect(rainOver(new Map(), '2026-06-30', 30).needMm).toBeCloseTo(107.14, 2)
  })
})
