import { describe, expect, it } from 'vitest'
import { countInterval, earlierYears, sameWeeksBefore } from '../../../src/season/index.js'
import { byWeek } from './by-week.js'

describe('the same week of earlier years', () => {
  it('is the mean of the years on record, with the interval of all their reports together', () => {
    const { years, usual } = earlierYears(byWeek([['2025-W20', 4], ['2024-W20', 1], ['2022-W20', 9]]), sameWeeksBefore('2026-W20', '2023-W01'))
    expect(years).toEqual([{ week: '2025-W20', reports: 4 }, { week: '2024-W20', reports: 1 }, { week: '2023-W20', reports: 0 }])
    const { low, high } = countInterval(5)
    expect(usual).toEqual({ mean: 5 / 3, low: low / 3, high: high / 3 })
  })

  it('is nothing while there is no earlier year', () => {
    expect(earlierYears(byWeek([['2026-W20', 4]]), sameWeeksBefore('2026-W20', '2025-W40'))).toEqual({ years: [], usual: null })
  })
})
