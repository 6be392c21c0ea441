import { EMPTY_DAY, type DayHours } from './day-hours.js'
import { datesFrom } from './days.js'
import type { DailyRecord } from './records.js'

/** A day some of whose hours are missing. */
export interface MissingHours {
  readonly date: string
  /** Hours of the day, 0 to 23, without temperature or without both humidity and leaf wetness. */
  readonly hours: readonly number[]
}

/** What is missing between two days, both included. */
export interface Missing {
  /** Days without a lowest or a highest temperature. */
  readonly temperatureDays: readonly string[]
  /** Days without a measure of rain. */
  readonly rainDays: readonly string[]
  /** Days with missing hours; a day of which no hour is known stands in `hourlessDays` instead. */
  readonly hours: readonly MissingHours[]
  readonly hourlessDays: readonly string[]
}

/** Names every day and hour that is missing. Nothing is ever filled in for them. */
export function missingBetween(days: ReadonlyMap<string, DailyRecord>, hours: ReadonlyMap<string, DayHours>, first: string, last: string): Missing {
  const dates = datesFrom(first, last)
  const gaps = dates.map((date): MissingHours => ({
    date,
    hours: (hours.get(date) ?? EMPTY_DAY).flatMap((hour, number) => (
      hour === null || hour.temperatureC === null || (hour.humidityPct === null && hour.wetMinutes === null) ? [number] : []
    )),
  }))
  return {
    temperatureDays: dates.filter((date) => (days.get(date)?.minC ?? null) === null || (days.get(date)?.maxC ?? null) === null),
    rainDays: dates.filter((date) => (days.get(date)?.rainMm ?? null) === null),
    hours: gaps.filter((gap) => gap.hours.length > 0 && gap.hours.length < EMPTY_DAY.length),
    hourlessDays: gaps.filter((gap) => gap.hours.length === EMPTY_DAY.length).map(({ date }) => date),
  }
}
