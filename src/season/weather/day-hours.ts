import type { HourlyRecord } from './records.js'

export const HOURS_A_DAY = 24

/** The hours of one day by their number, 0 to 23; null where there is no record. */
export type DayHours = readonly (HourlyRecord | null)[]

/** Hourly records by day. Of two records of one hour the later in the list counts. */
export function hoursByDay(hours: readonly HourlyRecord[]): Map<string, DayHours> {
  const days = new Map<string, (HourlyRecord | null)[]>()
  for (const record of hours) {
    const date = record.hour.slice(0, 10)
    let day = days.get(date)
    if (day === undefined) {
      day = new Array<HourlyRecord | null>(HOURS_A_DAY).fill(null)
      days.set(date, day)
    }
    day[Number(record.hour.slice(11, 13))] = record
  }
  return days
}

/** A day of which nothing is recorded. */
export const EMPTY_DAY: DayHours = new Array<null>(HOURS_A_DAY).fill(null)
