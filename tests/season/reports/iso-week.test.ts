import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mondayOfWeek, isoWeekOf, sameWeekBefore, weekAfter, weekParts, weeksBetween } from '../../../src/season/index.js'

const days = fc.integer({ min: 0, max: 36_500 }).map((count) => new Date(Date.UTC(1990, 0, 1) + count * 86_400_000).toISOString().slice(0, 10))

describe('weeks', () => {
  it('begin on the Monday that is at most six days before every day of theirs', () => {
    fc.assert(fc.property(days, (day) => {
      const monday = mondayOfWeek(isoWeekOf(day))
      expect(new Date(monday).getUTCDay()).toBe(1)
      const apart = (Date.parse(day) - Date.parse(monday)) / 86_400_000
      expect(apart).toBeGreaterThanOrEqual(0)
      expect(apart).toBeLessThanOrEqual(6)
    }))
  })

  it('follow one another without a gap, in the order of their text', () => {
    fc.assert(fc.property(days, fc.integer({ min: 1, max: 300 }), (day, count) => {
      const week = isoWeekOf(day)
      expect(weekAfter(weekAfter(week, count), -count)).toBe(week)
      expect(weekAfter(week, count) > week).toBe(true)
      expect(weeksBetween(week, weekAfter(week, count))).toHaveLength(count + 1)
    }))
  })

  it('hold week 53 against the last week of a year that has none', () => {
    expect(sameWeekBefore('2020-W53', 1)).toBe('2019-W52')
    expect(sameWeekBefore('2026-W21', 2)).toBe('2024-W21')
  })

  it('are refused when they are no weeks', () => {
    expect(() => weekParts('2026-21')).toThrow('Expected one like 2026-W21')
  })
})
