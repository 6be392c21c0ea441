import { describe, expect, it } from 'vitest'
import { inShort } from '../../../src/web/season/numbers.js'
import { weekInWords } from '../../../src/web/wording/day.js'

describe('numbers and weeks of the season page', () => {
  it('are written in two digits, and whole from ten on', () => {
    expect([0, 0.349, 2.449, 3, 9.96, 10.4, 123.6].map(inShort)).toEqual([0, 0.35, 2.4, 3, 10, 10, 124])
  })

  it('name a week by its first and last day, across months and years too', () => {
    expect(['2026-05-18', '2026-04-27', '2025-12-29'].map((monday) => weekInWords(monday))).toEqual(['18\u2009–\u200924 May 2026', '27 April\u2009–\u20093 May 2026', '29 December 2025\u2009–\u20094 January 2026'])
  })
})
