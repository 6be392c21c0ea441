import { describe, expect, it } from 'vitest'
import { type BlightDay, blightWeather, HUTTON, SMITH, wallinSeverity } from '../../../src/season/index.js'

const day = (date: string, minC: number, humidHours: number): BlightDay => ({ date, minC, coldestKnownC: null, humidHours, unknownHours: 0 })

describe('two-day weather of late blight', () => {
  // Hutton criteria: Agriculture and Horticulture Development Board 2017 (archive.ahdb.org.uk, "Development and implementation
  // of a new national warning system for potato late blight in Great Britain"): two days running, each at 10 °C or more with
  // 6 hours or more at 90 % humidity. Smith 1956, Plant Pathology 5:83-87: 11 hours (from memory).
  it.each([
    ['just enough for Hutton', [10, 6], [10, 6], true, false],
    ['just enough for Smith', [10, 11], [10, 11], true, true],
    ['an hour short on the first day', [10, 5], [12, 20], false, false],
    ['a tenth of a degree short on the first day', [9.9, 12], [14, 12], false, false],
    ['between the two', [12, 8], [11, 7], true, false],
  ] as const)('holds at its limits: %s', (_, [firstMin, firstHours], [secondMin, secondHours], hutton, smith) => {
    const days = [day('2026-07-01', firstMin, firstHours), day('2026-07-02', secondMin, secondHours)]
    expect(blightWeather(days, HUTTON).days).toEqual(hutton ? ['2026-07-02'] : [])
    expect(blightWeather(days, SMITH).days).toEqual(smith ? ['2026-07-02'] : [])
  })

  it.each([
    ['a dry day between', [day('2026-07-01', 12, 11), day('2026-07-02', 12, 0), day('2026-07-03', 12, 11)]],
    ['a day without records between', [day('2026-07-01', 12, 11), day('2026-07-03', 12, 11)]],
  ])('asks for days that follow each other: not with %s', (_, days) => {
    expect(blightWeather(days, HUTTON).days).toEqual([])
    expect(blightWeather(days, SMITH).days).toEqual([])
  })
})

describe('severity of humid spells', () => {
  // Worked from the table of Wallin 1962, Am. Potato J. 39:306-312, as Krause, Massie & Hyre 1975, Plant Dis. Reporter 59:95-98,
  // use it (bands and hours as a university page on the modified version prints them; last column from memory).
  it.each([[12, 65, 1], [16, 50, 1], [16, 57, 2], [16, 70, 3], [20, 70, 4], [20, 40, 0]])('is right for %i hours at %i °F', (hours, fahrenheit, value) => {
    expect(wallinSeverity((fahrenheit - 32) / 1.8, hours)).toBe(value)
  })

  it.each([
    // °C, then the first hours of 1, 2, 3 and 4.
    [9, 16, 19, 22, 25], [13, 13, 16, 19, 22], [20, 10, 13, 16, 19],
  ])('steps up at the hours of the table at %i °C', (celsius, ...steps) => {
    steps.forEach((hours, step) => {
      expect(wallinSeverity(celsius, hours - 1)).toBe(step)
      expect(wallinSeverity(celsius, hours)).toBe(step + 1)
    })
  })

  it('is nothing outside the bands', () => {
    expect([wallinSeverity(7.1, 24), wallinSeverity(26.7, 24)]).toEqual([0, 0])
  })
})
