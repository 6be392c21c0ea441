import { describe, expect, it } from 'vitest'
import { degreeDays, sumDegreeDays } from '../../../src/season/index.js'

describe('degree days against worked days', () => {
  // Worked from the published formulas (McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300; Baskerville & Emin 1969,
  // Ecology 50:514-517; Zalom et al. 1983, Univ. California Leaflet 21373). The values of the sine also agree with numerical
  // integration in 200,000 steps. 50/86 °F are the thresholds of maize, 50/88 °F those of codling moth.
  it.each([
    // lowest, highest, lower, upper, average, modified, sine cut off, triangle cut off, sine without an upper threshold
    [30, 48, 50, 86, 0, 0, 0, 0, 0],
    [40, 70, 50, 86, 5, 10, 7.5424, 6.6667, 7.5424],
    [45, 60, 50, 86, 2.5, 5, 3.7712, 3.3333, 3.7712],
    [45, 75, 50, 88, 10, 12.5, 10.8816, 10.4167, 10.8816],
    [60, 80, 50, 86, 20, 20, 20, 20, 20],
    [50, 90, 50, 86, 20, 18, 19.4576, 19.8, 20],
    [65, 95, 50, 86, 30, 25.5, 27.838, 28.65, 30],
    [45, 95, 50, 88, 20, 19, 19.5501, 19.76, 20.678],
    [88, 100, 50, 88, 44, 38, 38, 38, 44],
    [5, 21, 10, 30, 3, 5.5, 4.2277, 3.7812, 4.2277],
    [8, 34, 10, 30, 11, 10, 10.5606, 10.7692, 11.2373],
  ])('are right for %s to %s between %s and %s', (min, max, lower, upper, average, modified, sine, triangle, sineUncut) => {
    const both = { lower, upper }
    expect(degreeDays('average', min, max, both)).toBeCloseTo(average, 4)
    expect(degreeDays('modified average', min, max, both)).toBeCloseTo(modified, 4)
    expect(degreeDays('single sine', min, max, both)).toBeCloseTo(sine, 4)
    expect(degreeDays('single triangle', min, max, both)).toBeCloseTo(triangle, 4)
    expect(degreeDays('single sine', min, max, { lower, upper: null })).toBeCloseTo(sineUncut, 4)
  })

  // A public page on codling moth, 50/88 °F (calculator7.snowdaycalculatornow.com/how-to-calculate-degree-days-for-codling-moth/;
  // of little authority, its arithmetic checked): 48 to 72 gives 11, 52 to 80 gives 16, together 27.
  it('sum up as in a published example of two days', () => {
    const days = new Map([['2026-05-01', { date: '2026-05-01', minC: 48, maxC: 72, rainMm: null }], ['2026-05-02', { date: '2026-05-02', minC: 52, maxC: 80, rainMm: null }]])
    const { points } = sumDegreeDays(days, { method: 'modified average', lower: 50, upper: 88 }, '2026-05-01', '2026-05-02')
    expect(points.map(({ sum }) => sum)).toEqual([11, 27])
  })

  // Democrat and Chronicle, Rochester, 30 May 2013, on emerald ash borer: 82 and 61 °F over a base of 50 °F give 21.5.
  it('are those of a day that a newspaper printed', () => {
    expect(degreeDays('average', 61, 82, { lower: 50, upper: null })).toBe(21.5)
  })

  // A page of the University of Illinois Extension (Good Growing, 16 June 2015) prints the formula with a minus between
  // highest and lowest. So copied, this day would have none.
  it('do not follow a misprint that takes the lowest from the highest', () => {
    expect(degreeDays('average', 61, 82, { lower: 50, upper: null })).not.toBe(Math.max(0, (82 - 61) / 2 - 50))
  })
})
