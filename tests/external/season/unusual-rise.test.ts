import { describe, expect, it } from 'vitest'
import { type IsoWeek, risePlan, sameWeekBefore, unusualRise, weekAfter } from '../../../src/season/index.js'
import { byWeek } from '../../season/reports/by-week.js'

const WEEK: IsoWeek = '2026-W30'

/**
 * Historical limits: Stroup D.F., Williamson G.D., Herndon J.L., Karon J.M. (1989), Detection of aberrations in the occurrence
 * of notifiable diseases surveillance data, Statistics in Medicine 8:323-329. No worked example of the paper was at
 * hand: the numbers are worked by hand from its formula, mean and standard deviation (n - 1) of fifteen periods of four
 * weeks, limit = mean + 2 standard deviations.
 */
describe('historical limits, worked by hand from the published formula', () => {
  // Fifteen periods: in each of five years 4, 8 and 12 reports. Mean 8; squares of 4 ten times: 160 / 14; deviation 3.3806.
  const counts = new Map<string, number>()
  for (let year = 1; year <= 5; year++) {
    const same = sameWeekBefore(WEEK, year)
    ;[4, 8, 12].forEach((total, place) => { counts.set(weekAfter(same, (place - 1) * 4 - 1), total) })
  }
  const limit = 8 + 2 * Math.sqrt(160 / 14)

  it.each([[14, false], [15, true]] as const)('with %d reports in four weeks it is unusual: %s', (now, isUnusual) => {
    const verdict = unusualRise(byWeek([...counts, [WEEK, now - 10], [weekAfter(WEEK, -3), 10]]), risePlan(WEEK, '2021-W01'))
    expect(verdict).toMatchObject({ method: 'historical limits', isUnusual, count: now, mean: 8, years: 5 })
    expect(verdict.limit).toBeCloseTo(limit, 10)
    expect(limit).toBeCloseTo(14.7612, 4)
  })
})

/**
 * C2: Hutwagner L., Thompson W., Seeman G.M., Treadwell T. (2003), The bioterrorism preparedness and response Early
 * Aberration Reporting System (EARS), Journal of Urban Health 80(2 Suppl 1):i89-i96; baseline of seven, two left out, limit =
 * mean + 3 standard deviations, as the documentation of earsC in the R package surveillance has it too. The numbers are
 * worked by hand from the formula.
 */
describe('C2, worked by hand from the published formula', () => {
  // 1 2 3 4 5 6 7 in weeks 21 to 27: mean 4, squares 9 4 1 0 1 4 9 = 28, / 6, deviation 2.1602; limit 10.4807.
  const baseline = [1, 2, 3, 4, 5, 6, 7].map((count, place): [string, number] => [weekAfter('2026-W21', place), count])

  it.each([[10, false], [11, true]] as const)('with %d reports in the week it is unusual: %s', (now, isUnusual) => {
    const verdict = unusualRise(byWeek([...baseline, ['2026-W28', 50], ['2026-W29', 50], [WEEK, now]]), risePlan(WEEK, '2026-W01'))
    expect(verdict).toMatchObject({ method: 'C2', isUnusual, count: now, mean: 4, years: 0 })
    expect(verdict.limit).toBeCloseTo(4 + 3 * Math.sqrt(28 / 6), 10)
  })
})
