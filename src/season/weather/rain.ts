import { addDays, datesFrom } from './days.js'
import type { DailyRecord } from './records.js'

/**
 * Water that most gardens need in the growing season, rain included: about an inch a week. Widely printed advice, among
 * others in a tip sheet of the United States Department of Agriculture.
 */
export const WEEKLY_NEED_MM = 25

/** Rain of the last days, at least: days without a measure add nothing and are named. */
export interface RainSum {
  readonly days: number
  /** mm. */
  readonly sumMm: number
  /** What 25 mm a week would be over these days, mm. */
  readonly needMm: number
  readonly missingDays: readonly string[]
  /** Every day with its measure, mm; null where there is none. */
  readonly byDay: readonly { readonly date: string; readonly mm: number | null }[]
}

/** Rain of so many days, the last of them `last`. */
export function rainOver(records: ReadonlyMap<string, DailyRecord>, last: string, days: number): RainSum {
  const byDay = datesFrom(addDays(last, 1 - days), last).map((date) => ({ date, mm: records.get(date)?.rainMm ?? null }))
  return {
    days, sumMm: byDay.reduce((sum, { mm }) => sum + (mm ?? 0), 0), needMm: (WEEKLY_NEED_MM * days) / 7,
    missingDays: byDay.filter(({ mm }) => mm === null).map(({ date }) => date), byDay,
  }
}
