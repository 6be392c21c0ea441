import { type WetSpell, wetSpells } from './apple-scab.js'
import { type Missing, missingBetween } from './completeness.js'
import { completedBy, dailyFromHours } from './daily-from-hours.js'
import { EMPTY_DAY, hoursByDay } from './day-hours.js'
import { daylightAt } from './daylight.js'
import { addDays, datesFrom, lastOccurrence } from './days.js'
import { type DatedNeed, firstDayOf, keyOf } from './degree-day-needs.js'
import { type DegreeDaySum, sumDegreeDays } from './degree-day-sum.js'
import { blightDay, type BlightWeather, blightWeather, HUTTON, SMITH } from './late-blight.js'
import { type WetHours, wetHoursOf } from './leaf-wetness.js'
import { type RainSum, rainOver } from './rain.js'
import type { DailyRecord, HourlyRecord, Station } from './records.js'
import { type SeveritySum, sumSeverity } from './tomato-severity.js'
import { sumWallin, type WallinSum } from './wallin.js'

/** How many days of hours a summary looks back over. */
export const HOURS_BACK_DAYS = 42

/** The severity values of so many last days are summed: two of the usual spray intervals of a week. */
export const SEVERITY_DAYS = 14

/** One sum of degree days with how it was reckoned. */
export interface DatedSum extends DegreeDaySum {
  readonly need: DatedNeed
  /** ISO date of the first day that counts. */
  readonly since: string
}

/** What a station's records say as of a day. A day counts when it is over: all is up to the day before. */
export interface WeatherSummary {
  /** ISO date: the day it is. */
  readonly asOf: string
  readonly station: Station
  /** The last day that counts, the one before `asOf`. */
  readonly lastDay: string
  /** The last day of which anything is recorded, or null. */
  readonly lastRecorded: string | null
  readonly rain: { readonly week: RainSum; readonly month: RainSum }
  readonly degreeDays: readonly DatedSum[]
  /** Of the last 42 days, as are the others. */
  readonly lateBlight: { readonly hutton: BlightWeather; readonly smith: BlightWeather; readonly wallin: WallinSum }
  readonly wetHours: readonly WetHours[]
  /** Of the last 14 days. */
  readonly tomatoSeverity: SeveritySum
  readonly wetSpells: readonly WetSpell[]
  /** Of the last 42 days. */
  readonly missing: Missing
  /** Days whose lowest and highest temperature, or rain, were taken from 24 hourly values. */
  readonly fromHours: readonly string[]
}

/** First day of daily records, and of hourly ones, that a summary needs. */
export function daysNeeded(asOf: string, needs: readonly DatedNeed[]): { readonly daily: string; readonly hourly: string } {
  const last = addDays(asOf, -1)
  const hourly = addDays(asOf, -HOURS_BACK_DAYS)
  return { daily: [firstDayOf(needs, last), hourly].sort()[0] ?? hourly, hourly }
}

/**
 * Sums up a station's records.
 * @param asOf ISO date of the day it is; that day itself does not count yet
 * @param daily records of days, from `daysNeeded` on; later and earlier ones do no harm
 * @param hourly records of hours, likewise
 * @param needs which sums of degree days are asked for
 * @param ofHours what all 24 hours of a day add up to, for days before those of `hourly`; it stands in where a day's own record lacks a value
 */
export function summarize(
  station: Station, asOf: string, daily: readonly DailyRecord[], hourly: readonly HourlyRecord[], needs: readonly DatedNeed[],
  ofHours: readonly DailyRecord[] = [],
): WeatherSummary {
  const lastDay = addDays(asOf, -1)
  const firstHours = addDays(asOf, -HOURS_BACK_DAYS)
  const hours = hoursByDay(hourly)
  const { days, fromHours } = withHours(daily, [...ofHours, ...[...hours].map(([date, day]) => dailyFromHours(date, day))])
  const dates = datesFrom(firstHours, lastDay)
  const blightDays = dates.map((date) => blightDay(date, days.get(date)?.minC ?? null, hours.get(date) ?? EMPTY_DAY))
  const wetHours = dates.map((date) => wetHoursOf(date, hours.get(date) ?? EMPTY_DAY))
  return {
    asOf, station, lastDay,
    lastRecorded: [...days.keys(), ...hours.keys()].filter((date) => date <= lastDay).sort().at(-1) ?? null,
    rain: { week: rainOver(days, lastDay, 7), month: rainOver(days, lastDay, 30) },
    degreeDays: needs.map((need) => {
      const since = lastOccurrence(need.from, lastDay)
      return { need, since, ...sumDegreeDays(days, need, since, lastDay) }
    }),
    lateBlight: {
      hutton: blightWeather(blightDays, HUTTON), smith: blightWeather(blightDays, SMITH),
      wallin: sumWallin(dates.map((date) => ({ date, hours: hours.get(date) ?? EMPTY_DAY }))),
    },
    wetHours,
    tomatoSeverity: sumSeverity(wetHours.slice(-SEVERITY_DAYS)),
    wetSpells: wetSpells(hours, firstHours, lastDay, daylightAt(station)),
    missing: missingBetween(days, hours, firstHours, lastDay),
    fromHours: fromHours.filter((date) => date <= lastDay),
  }
}

/** The sum that a need asks for, or undefined when the summary has not reckoned it. */
export function sumFor(summary: WeatherSummary, need: DatedNeed): DatedSum | undefined {
  const key = keyOf(need)
  return summary.degreeDays.find((sum) => keyOf(sum.need) === key)
}

function withHours(daily: readonly DailyRecord[], ofHours: readonly DailyRecord[]): { days: Map<string, DailyRecord>; fromHours: string[] } {
  const days = new Map(daily.map((record) => [record.date, record]))
  const fromHours = new Set<string>()
  for (const summed of ofHours) {
    const own = days.get(summed.date) ?? { date: summed.date, minC: null, maxC: null, rainMm: null }
    const whole = completedBy(own, summed)
    if (whole.minC !== own.minC || whole.maxC !== own.maxC || whole.rainMm !== own.rainMm) fromHours.add(summed.date)
    days.set(summed.date, whole)
  }
  return { days, fromHours: [...fromHours].sort() }
}
