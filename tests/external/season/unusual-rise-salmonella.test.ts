import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { isoWeekOf, risePlan, type RiseVerdict, unusualRise, weekAfter } from '../../../src/season/index.js'
import { byWeek } from '../../season/reports/by-week.js'

/**
 * Salmonella Newport in Germany, weekly reports of 2004 to 2012 (Robert Koch Institute, SurvStat; the data set
 * `salmNewport` of the R package surveillance: Salmon M., Schumacher D., Höhle M. (2016), Monitoring count time series in R,
 * Journal of Statistical Software 70(10), doi 10.18637/jss.v070.i10), with the alarms that the package's own `earsC`
 * (C2, alpha 0.001) and `algo.cdc` (b = 5, m = 1, alpha 0.001) gave for 2011 and 2012, as recorded in the test data of the Python
 * package epysurv (tests/data/EarsC2_pred.csv and CDC_pred.csv). The great outbreak of November 2011 came with bean sprouts.
 */
const Row = z.object({
  monday: z.iso.date(), reports: z.coerce.number(), alarm_c2: z.enum(['', '0', '1']), alarm_historical_limits: z.enum(['', '0', '1']),
})
const rows = z.array(Row).parse(parse(readFileSync('tests/external/season/salmonella-newport.csv'), { columns: true }))
const counts = byWeek(rows.map(({ monday, reports }) => [isoWeekOf(monday), reports]))
const judged = rows.filter(({ alarm_c2 }) => alarm_c2 !== '')
const firstWeek = isoWeekOf('2004-01-05')

/** The verdict by C2: with a year on record there is nothing for historical limits to go by. */
const byC2 = (monday: string): RiseVerdict => {
  const week = isoWeekOf(monday)
  return unusualRise(counts, risePlan(week, weekAfter(week, -52)))
}
const byLimits = (monday: string): RiseVerdict => unusualRise(counts, risePlan(isoWeekOf(monday), firstWeek))

const meanOf = ({ mean }: RiseVerdict): number => mean ?? NaN
/** The standard deviation that a verdict went by. */
const spreadOf = ({ method, mean, limit }: RiseVerdict): number => ((limit ?? NaN) - (mean ?? NaN)) / (method === 'C2' ? 3 : 2)

describe('C2 on published weekly counts', () => {
  it('calls the same weeks of two years unusual as the R package surveillance', () => {
    const ours = judged.filter(({ monday }) => byC2(monday).isUnusual).map(({ monday }) => monday)
    const theirs = judged.filter(({ alarm_c2 }) => alarm_c2 === '1').map(({ monday }) => monday)
    expect(theirs).toHaveLength(7)
    expect(ours).toEqual(theirs)
  })

  // tests/testthat/test-earsC.R of that package: upper bounds of C1 with alpha 0.05, so mean + 1.644854 standard deviations of
  // the seven weeks before. C2 has the same seven weeks as its baseline two weeks later.
  it.each([['2011-01-03', 3.278854], ['2011-01-10', 3.278854], ['2011-01-17', 3.436517], ['2011-01-24', 3.855617]])(
    'has the baseline behind the bound that the package’s own test gives for the week of %s', (monday, bound) => {
      const later = byC2(judged[judged.findIndex((row) => row.monday === monday) + 2]?.monday ?? '')
      expect(meanOf(later) + 1.644854 * spreadOf(later)).toBeCloseTo(bound, 5)
    })
})

describe('historical limits on published weekly counts', () => {
  // algo.cdc takes a prediction interval (Farrington & Andrews 2003) where the published method takes two standard
  // deviations: qnorm(1 - 0.001 / 2) × √(1 + 1/15).
  const PREDICTION = 3.290527 * Math.sqrt(1 + 1 / 15)

  it('holds the last four weeks against the same fifteen periods as the R package: with its wider limit the same weeks stand out', () => {
    const ours = judged.filter(({ monday }) => {
      const verdict = byLimits(monday)
      expect(verdict).toMatchObject({ method: 'historical limits', years: 5 })
      return verdict.count > meanOf(verdict) + PREDICTION * spreadOf(verdict)
    }).map(({ monday }) => monday)
    const theirs = judged.filter(({ alarm_historical_limits }) => alarm_historical_limits === '1').map(({ monday }) => monday)
    expect(theirs).toHaveLength(5)
    expect(ours).toEqual(theirs)
  })

  it('calls every one of those weeks unusual by the limit as published, too', () => {
    const weeks = judged.filter(({ alarm_historical_limits }) => alarm_historical_limits === '1')
    expect(weeks.map(({ monday }) => byLimits(monday).isUnusual)).toEqual([true, true, true, true, true])
  })
})
