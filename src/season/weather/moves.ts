import type { FavourableWeather, HeatWindow, Problem } from '../../guide/index.js'
import { daysBetween } from './days.js'
import { inUnitOf, needOf } from './degree-day-needs.js'
import { sumFor, type WeatherSummary } from './summary.js'

/**
 * By what weather moves how plausible a problem is. Our judgement, kept small: weather makes a problem possible and never
 * certain, so that no finding is outweighed by it. Nothing is moved by missing records.
 */
export const weatherFactors = {
  'late-blight weather': 2, 'tomato leaf-blight weather': 1.5, 'apple-scab weather': 2, 'wet leaves': 1.5, drought: 1.5, 'soaking rain': 1.5,
  'in its heat window': 1.5, 'outside its heat window': 0.5,
} as const

/** All of one problem's weather together moves it no further than this. */
export const weatherCaps = { least: 0.5, most: 2 } as const

/** Why weather moves a problem: a code with values, for other languages, and the English words. */
export interface WeatherReason {
  readonly code: keyof typeof reasonWords
  readonly values: Readonly<Record<string, string | number>>
  readonly words: string
}

/** One reason that weather gives, and by how much. */
export interface WeatherMove {
  readonly factor: number
  readonly reason: WeatherReason
}

/** The English words of each reason; {name} stands for a value. */
export const reasonWords = {
  BLIGHT_WEATHER: '{count} times two days of blight weather in the last {days} days',
  BLIGHT_WEATHER_ONCE: 'two days of blight weather in the last {days} days',
  LEAF_BLIGHT_WEATHER: 'leaf-blight weather: {sum} severity points in the last {days} days',
  SCAB_WEATHER: '{count} spells of scab weather, {least} to {most} days ago',
  SCAB_WEATHER_ONCE: 'a spell of scab weather, {least} to {most} days ago',
  WET_LEAVES: 'leaves were wet for {hours} hours a day or more on {count} of the last {days} days',
  DROUGHT: 'only {rain} mm of rain in the last 30 days',
  SOAKING_RAIN: '{rain} mm of rain in the last 7 days',
  HEAT_NOW: 'about now by this year\'s warmth: {sum} degree days above {base} °{unit}',
  HEAT_TOO_EARLY: 'early for it by this year\'s warmth: {sum} degree days above {base} °{unit}, seen from {least}',
  HEAT_OVER: 'late for it by this year\'s warmth: {sum} degree days above {base} °{unit}, seen until {most}',
} as const

/** A problem's weather in the guide, and nothing else of it. */
export type WeatherOf = Pick<Problem, 'favouredBy' | 'heatWindow'>

/** What the weather says of a problem; nothing where it asks for none, or where there are too few records. */
export function weatherMoves(problem: WeatherOf, summary: WeatherSummary): WeatherMove[] {
  const favours = problem.favouredBy.flatMap((weather) => {
    const reason = tests[weather](summary)
    return reason === null ? [] : [{ factor: weatherFactors[weather], reason }]
  })
  return problem.heatWindow === null ? favours : [...favours, ...heatMoves(problem.heatWindow, summary)]
}

/** All moves of a problem's weather as one factor, capped. */
export function weatherFactor(moves: readonly WeatherMove[]): number {
  return Math.min(weatherCaps.most, Math.max(weatherCaps.least, moves.reduce((product, { factor }) => product * factor, 1)))
}

/** Spots of late blight show within days; after this many days weather says nothing of what is seen now (common practice, no source). */
const BLIGHT_DAYS = 21
/** The usual sum between two sprays is 15 to 20 severity values (Pennsylvania State University Extension 2012). */
const SEVERITY_IN_FORTNIGHT = 15
const FORTNIGHT = 14
/** Scab shows 9 to 17 days after infection (Washington State University tree fruit extension), and stays: a month is allowed. */
const SCAB_SHOWS = { least: 9, most: 30 }
/** Most leaf fungi need 6 to 8 hours and more (rule of thumb, from memory); the upper end on at least half the days of a week. */
const WET_LEAF = { hours: 8, days: 7, count: 4 }
/** Shares of 25 mm a week over the month and over the week, below which plants that are not watered go short (our judgement). */
const DRY = { month: 1 / 4, week: 1 / 2 }
/** Rain of a week at which heavy soil has no air left: three weeks' need at once (our judgement). */
const SOAKED_WEEKS = 3

const tests: Readonly<Record<FavourableWeather, (summary: WeatherSummary) => WeatherReason | null>> = {
  'late-blight weather': ({ lateBlight: { hutton }, lastDay }) => {
    const count = hutton.days.filter((day) => daysBetween(day, lastDay) < BLIGHT_DAYS).length
    if (count === 0) return null
    return count === 1 ? reason('BLIGHT_WEATHER_ONCE', { days: BLIGHT_DAYS }) : reason('BLIGHT_WEATHER', { count, days: BLIGHT_DAYS })
  },
  'tomato leaf-blight weather': ({ tomatoSeverity: { sum } }) => (
    sum < SEVERITY_IN_FORTNIGHT ? null : reason('LEAF_BLIGHT_WEATHER', { sum, days: FORTNIGHT })
  ),
  'apple-scab weather': ({ wetSpells, lastDay }) => {
    const ages = wetSpells.filter(({ infects }) => infects === true).map(({ to }) => daysBetween(to.slice(0, 10), lastDay) + 1)
    const count = ages.filter((age) => age >= SCAB_SHOWS.least && age <= SCAB_SHOWS.most).length
    if (count === 0) return null
    return count === 1 ? reason('SCAB_WEATHER_ONCE', SCAB_SHOWS) : reason('SCAB_WEATHER', { count, ...SCAB_SHOWS })
  },
  'wet leaves': ({ wetHours }) => {
    const count = wetHours.slice(-WET_LEAF.days).filter(({ hours }) => hours >= WET_LEAF.hours).length
    return count < WET_LEAF.count ? null : reason('WET_LEAVES', { hours: WET_LEAF.hours, count, days: WET_LEAF.days })
  },
  drought: ({ rain: { week, month } }) => {
    // A day without a measure may have been the wet one, so every day must be known.
    if (week.missingDays.length + month.missingDays.length > 0) return null
    return month.sumMm > month.needMm * DRY.month || week.sumMm > week.needMm * DRY.week ? null : reason('DROUGHT', { rain: Math.round(month.sumMm) })
  },
  'soaking rain': ({ rain: { week } }) => (week.sumMm < week.needMm * SOAKED_WEEKS ? null : reason('SOAKING_RAIN', { rain: Math.round(week.sumMm) })),
}

/** Published thresholds are ranges themselves (950, 971 and 900 to 1200 for one event), so a margin says nothing either way. */
const HEAT_MARGIN = 0.2
/** So large a share of days may be missing before the sum is left unused. */
const MISSING_SHARE = 0.05

function heatMoves(window: HeatWindow, summary: WeatherSummary): WeatherMove[] {
  const found = sumFor(summary, needOf(window))
  if (found === undefined || found.points.length === 0 || found.missingDays.length > MISSING_SHARE * found.points.length) return []
  const sum = inUnitOf(window, found.sum)
  const values = { sum: Math.round(sum), base: window.base, unit: window.unit }
  if (sum < window.least * (1 - HEAT_MARGIN)) {
    return [{ factor: weatherFactors['outside its heat window'], reason: reason('HEAT_TOO_EARLY', { ...values, least: window.least }) }]
  }
  if (window.most !== null && sum > window.most * (1 + HEAT_MARGIN)) {
    return [{ factor: weatherFactors['outside its heat window'], reason: reason('HEAT_OVER', { ...values, most: window.most }) }]
  }
  // What stays once it is there is no likelier than the guide says already.
  return window.most !== null && sum >= window.least && sum <= window.most ? [{ factor: weatherFactors['in its heat window'], reason: reason('HEAT_NOW', values) }] : []
}

function reason(code: keyof typeof reasonWords, values: Readonly<Record<string, string | number>>): WeatherReason {
  return { code, values, words: reasonWords[code].replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? '')) }
}
