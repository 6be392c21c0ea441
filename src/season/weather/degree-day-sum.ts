import type { DegreeDayMethod } from '../../guide/index.js'
import { datesFrom } from './days.js'
import { degreeDays, type Thresholds } from './degree-days.js'
import type { DailyRecord } from './records.js'

/** How degree days are to be summed. */
export interface DegreeDayNeed extends Thresholds {
  readonly method: DegreeDayMethod
}

/** The sum at the end of one day. */
export interface DegreeDayPoint {
  readonly date: string
  /** Sum so far; a day without both temperatures adds nothing to it. */
  readonly sum: number
}

/** Degree days from a start on, at least: days without temperatures add nothing and are named. */
export interface DegreeDaySum {
  /** °C degree days. */
  readonly sum: number
  readonly points: readonly DegreeDayPoint[]
  /** Days without a lowest or a highest temperature. */
  readonly missingDays: readonly string[]
}

/**
 * Sums degree days over every day from `first` to `last`, both included.
 * @param days records by date, temperatures and thresholds in °C
 */
export function sumDegreeDays(days: ReadonlyMap<string, DailyRecord>, need: DegreeDayNeed, first: string, last: string): DegreeDaySum {
  let sum = 0
  const points: DegreeDayPoint[] = []
  const missingDays: string[] = []
  for (const date of datesFrom(first, last)) {
    const { minC = null, maxC = null } = days.get(date) ?? {}
    if (minC === null || maxC === null) missingDays.push(date)
    else sum += degreeDays(need.method, minC, maxC, need)
    points.push({ date, sum })
  }
  return { sum, points, missingDays }
}
