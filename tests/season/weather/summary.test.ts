import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addDays, type DailyRecord, datesFrom, daysNeeded, type HourlyRecord, lastOccurrence, type Station, summarize, USUAL_NEED, weatherMoves,
} from '../../../src/season/index.js'

const STATION: Station = { id: 'holt-fen-school', name: 'Holt Fen School', district: 'holt-fen', latitude: 52.4, longitude: 0, clockMinutes: 0 }
const AS_OF = '2026-07-01'
const LAST = '2026-06-30'

const dry = (date: string, minC: number | null = 12, maxC: number | null = 22, rainMm: number | null = 0): DailyRecord => ({ date, minC, maxC, rainMm })
const hoursOf = (date: string, make: (hour: number) => Partial<HourlyRecord> | null): HourlyRecord[] => Array.from({ length: 24 }, (_, hour) => {
  const made = make(hour)
  return made === null ? [] : [{ hour: `${date}T${String(hour).padStart(2, '0')}`, temperatureC: 15, humidityPct: 60, rainMm: 0, wetMinutes: null, ...made }]
}).flat()
const summary = (daily: readonly DailyRecord[], hourly: readonly HourlyRecord[] = []) => summarize(STATION, AS_OF, daily, hourly, [USUAL_NEED])
const allDays = datesFrom('2026-01-01', LAST)

describe('the weather as of a day', () => {
  it('counts days that are over, and not the day itself', () => {
    const found = summary([dry(LAST, 10, 20, 3), dry(AS_OF, 10, 20, 50)])
    expect(found).toMatchObject({ lastDay: LAST, lastRecorded: LAST, rain: { week: { sumMm: 3 } } })
  })

  it('names every missing day and hour, and fills in none', () => {
    const daily = allDays.filter((date) => date !== '2026-06-20').map((date) => (date === '2026-06-21' ? dry(date, null, 20, null) : dry(date)))
    const found = summary(daily, hoursOf(LAST, (hour) => (hour === 3 ? null : hour === 4 ? { humidityPct: null } : {})))
    expect(found.degreeDays[0]).toMatchObject({ since: '2026-01-01', missingDays: ['2026-06-20', '2026-06-21'], sum: 7 * (allDays.length - 2) })
    expect(found.rain.month).toMatchObject({ sumMm: 0, missingDays: ['2026-06-20', '2026-06-21'] })
    expect(found.missing).toMatchObject({ temperatureDays: ['2026-06-20', '2026-06-21'], rainDays: ['2026-06-20', '2026-06-21'], hours: [{ date: LAST, hours: [3, 4] }] })
    expect(found.missing.hourlessDays).toHaveLength(41)
    expect(found.tomatoSeverity.openDays).toContain(LAST)
  })

  it('takes a day from its hours only where all 24 are there, and says so', () => {
    const whole = summary([], hoursOf(LAST, (hour) => ({ temperatureC: hour, rainMm: 0.5 })))
    expect(whole).toMatchObject({ fromHours: [LAST], rain: { week: { sumMm: 12, missingDays: datesFrom('2026-06-24', '2026-06-29') } } })
    expect(whole.degreeDays[0]?.sum).toBe(1.5)
    expect(summary([], hoursOf(LAST, (hour) => (hour === 0 ? null : {}))).fromHours).toEqual([])
    const measured = summary([dry(LAST, 9, 21, 4)], hoursOf(LAST, () => ({})))
    expect(measured).toMatchObject({ fromHours: [], rain: { week: { sumMm: 4 } } })
  })

  it('says how it knows that leaves were wet', () => {
    const found = summary([], [
      ...hoursOf('2026-06-28', () => ({ wetMinutes: 45, humidityPct: 50 })), ...hoursOf('2026-06-29', () => ({ humidityPct: 90 })),
      ...hoursOf(LAST, (hour) => ({ wetMinutes: hour < 6 ? 60 : null, humidityPct: 89.9 })),
    ])
    expect(found.wetHours.slice(-3)).toMatchObject([{ hours: 24, source: 'measured' }, { hours: 24, source: 'estimated' }, { hours: 6, source: 'both' }])
    expect(found.wetHours[0]).toMatchObject({ hours: 0, source: null, unknownHours: 24, meanC: null })
  })

  it('leaves blight weather open where a missing hour could bring it', () => {
    const humid = (date: string, hours: number, unknown = 0) => hoursOf(date, (hour) => (hour < unknown ? null : { humidityPct: hour < unknown + hours ? 95 : 60 }))
    const days = ['2026-06-29', LAST].map((date) => dry(date))
    expect(summary(days, [...humid('2026-06-29', 6), ...humid(LAST, 6, 10)]).lateBlight.hutton).toMatchObject({ days: [LAST] })
    expect(summary(days, [...humid('2026-06-29', 6), ...humid(LAST, 5, 1)]).lateBlight.hutton).toEqual({ days: [], openDays: expect.arrayContaining([LAST]) as string[] })
    expect(summary(days, [...humid('2026-06-29', 6), ...humid(LAST, 5)]).lateBlight.hutton).toEqual({ days: [], openDays: expect.not.arrayContaining([LAST]) as string[] })
  })

  it('rules blight weather out by a cold hour, though others of the day are missing', () => {
    const day = (date: string, coldest: number) => hoursOf(date, (hour) => (hour === 12 ? null : { humidityPct: 95, temperatureC: hour === 4 ? coldest : 15 }))
    const open = summary([], [...day('2026-06-29', 11), ...day(LAST, 11)]).lateBlight.hutton
    expect(open).toMatchObject({ days: [], openDays: expect.arrayContaining([LAST]) as string[] })
    const cold = summary([], [...day('2026-06-29', 11), ...day(LAST, 9)]).lateBlight.hutton
    expect(cold).toMatchObject({ days: [], openDays: expect.not.arrayContaining([LAST]) as string[] })
  })

  it('sums Wallin\'s severity over days whose hours are all known', () => {
    // 16 hours at 70 °F count 3, 12 hours at 65 °F count 1 (tests/external/weather).
    const humid = (date: string, hours: number, temperatureC: number) => hoursOf(date, (hour) => ({ humidityPct: hour < hours ? 92 : 60, temperatureC }))
    const found = summary([], [...humid('2026-06-29', 16, 21.1), ...humid(LAST, 12, 18.3)]).lateBlight.wallin
    expect(found).toEqual({ sum: 4, openDays: datesFrom('2026-05-20', '2026-06-28') })
  })

  it('reads back as far as its longest sum', () => {
    expect(daysNeeded(AS_OF, [USUAL_NEED])).toEqual({ daily: '2026-01-01', hourly: '2026-05-20' })
    expect(daysNeeded('2026-01-05', [USUAL_NEED])).toEqual({ daily: '2025-11-24', hourly: '2025-11-24' })
    expect(lastOccurrence({ month: 3, day: 1 }, '2026-02-28')).toBe('2025-03-01')
    expect(lastOccurrence({ month: 3, day: 1 }, '2026-03-01')).toBe('2026-03-01')
  })

  it('has degree days and rain that only grow with days', () => {
    const temperature = fc.integer({ min: -10, max: 30 })
    fc.assert(fc.property(fc.array(fc.tuple(temperature, fc.nat(15), fc.nat(20)), { minLength: 1, maxLength: 60 }), (drawn) => {
      const daily = drawn.map(([min, range, rain], back) => dry(addDays(LAST, -back), min, min + range, rain))
      const found = summary(daily)
      const sums = found.degreeDays[0]?.points.map(({ sum }) => sum) ?? []
      expect([...sums].sort((a, b) => a - b)).toEqual(sums)
      expect(found.rain.month.sumMm).toBeGreaterThanOrEqual(found.rain.week.sumMm)
    }), { numRuns: 30 })
  })
})

describe('what weather moves', () => {
  const HEAT = { unit: 'C', least: 450, most: 900, base: 10, upper: null, from: { month: 1, day: 1 }, method: 'average' } as const
  const warm = (sum: number) => summarize(STATION, AS_OF, allDays.map((date) => dry(date, 10, 10 + (2 * sum) / allDays.length, 5)), [], [USUAL_NEED])

  it('is nothing without records', () => {
    const all = ['late-blight weather', 'tomato leaf-blight weather', 'apple-scab weather', 'wet leaves', 'drought', 'soaking rain'] as const
    expect(weatherMoves({ favouredBy: all, heatWindow: HEAT }, summary([]))).toEqual([])
  })

  it('is nothing for a problem that asks for no weather', () => {
    expect(weatherMoves({ favouredBy: [], heatWindow: null }, warm(600))).toEqual([])
  })

  it.each([
    [300, 'HEAT_TOO_EARLY', 0.5], [400, null, 1], [600, 'HEAT_NOW', 1.5], [1000, null, 1], [1200, 'HEAT_OVER', 0.5],
  ])('follows the warmth of the year, with a margin: %i degree days', (sum, code, factor) => {
    const moves = weatherMoves({ favouredBy: [], heatWindow: HEAT }, warm(sum))
    expect(moves.map((move) => ({ code: move.reason.code, factor: move.factor }))).toEqual(code === null ? [] : [{ code, factor }])
  })

  it('says its reason in plain words, with the values beside it', () => {
    expect(weatherMoves({ favouredBy: [], heatWindow: HEAT }, warm(600))[0]?.reason).toEqual({
      code: 'HEAT_NOW', values: { sum: 600, base: 10, unit: 'C' }, words: 'about now by this year\'s warmth: 600 degree days above 10 °C',
    })
  })

  it('does not go by a sum with more than one day in twenty missing', () => {
    const holey = summarize(STATION, AS_OF, allDays.filter((_, at) => at % 15 > 0).map((date) => dry(date, 10, 17, 5)), [], [USUAL_NEED])
    expect(weatherMoves({ favouredBy: [], heatWindow: HEAT }, holey)).toEqual([])
  })

  it('makes late blight likelier for three weeks after two days of its weather', () => {
    const humidOn = (dates: readonly string[]) => summary(dates.map((date) => dry(date)), dates.flatMap((date) => hoursOf(date, () => ({ humidityPct: 95 }))))
    const moves = weatherMoves({ favouredBy: ['late-blight weather'], heatWindow: null }, humidOn(['2026-06-09', '2026-06-10']))
    expect(moves).toEqual([{ factor: 2, reason: { code: 'BLIGHT_WEATHER_ONCE', values: { days: 21 }, words: 'two days of blight weather in the last 21 days' } }])
    expect(weatherMoves({ favouredBy: ['late-blight weather'], heatWindow: null }, humidOn(['2026-06-08', '2026-06-09']))).toEqual([])
  })

  it('calls a month drought only when every day of it was measured', () => {
    const drought = { favouredBy: ['drought'], heatWindow: null } as const
    expect(weatherMoves(drought, summary(allDays.map((date) => dry(date))))).toMatchObject([{ factor: 1.5, reason: { words: 'only 0 mm of rain in the last 30 days' } }])
    expect(weatherMoves(drought, summary(allDays.slice(0, -1).map((date) => dry(date))))).toEqual([])
    expect(weatherMoves(drought, summary(allDays.map((date) => dry(date, 10, 20, 4))))).toEqual([])
  })

  it('speaks of soaking rain, wet leaves, leaf-blight and scab weather', () => {
    const wetDays = datesFrom('2026-06-01', LAST)
    const found = summary(wetDays.map((date) => dry(date, 12, 22, 12)), wetDays.flatMap((date) => hoursOf(date, (hour) => ({ temperatureC: 20, wetMinutes: hour < 12 ? 60 : 0 }))))
    const moves = weatherMoves({ favouredBy: ['apple-scab weather', 'soaking rain', 'tomato leaf-blight weather', 'wet leaves'], heatWindow: null }, found)
    expect(moves.map(({ reason }) => reason.words)).toEqual([
      expect.stringMatching(/^\d+ spells of scab weather, 9 to 30 days ago$/), '84 mm of rain in the last 7 days',
      'leaf-blight weather: 28 severity points in the last 14 days', 'leaves were wet for 8 hours a day or more on 7 of the last 7 days',
    ])
  })
})
