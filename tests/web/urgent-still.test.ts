import { describe, expect, it } from 'vitest'
import { isUrgentStill } from '../../src/web/bench/urgent-still.js'

describe('an urgent ticket', () => {
  it.each(['waiting', 'taken', 'asked back', 'answered by asker', 'sent as a sample'] as const)('is marked while it is %s', (state) => {
    expect(isUrgentStill({ urgent: true, state })).toBe(true)
    expect(isUrgentStill({ urgent: false, state })).toBe(false)
  })

  it.each(['settled', 'merged'] as const)('is marked no more once it is %s', (state) => {
    expect(isUrgentStill({ urgent: true, state })).toBe(false)
  })
})
