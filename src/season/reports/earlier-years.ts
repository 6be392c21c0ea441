import { countInterval } from './count-interval.js'
import { type IsoWeek, sameWeekBefore } from './iso-week.js'
import type { CountsByWeek } from './unusual-rise.js'

/** The same week of the years before. */
export interface EarlierYears {
  /** Years on record, the last one first, each with its reports. */
  readonly years: readonly { readonly week: IsoWeek; readonly reports: number }[]
  /** Mean of a year with its 95 % interval (Garwood 1936, of all the years' reports together); null without a year. */
  readonly usual: { readonly mean: number; readonly low: number; readonly high: number } | null
}

/**
 * The same week of the years before, the last one first.
 * @param firstWeek when the records begin: years before it are not on record
 * @param most how many years back at most
 */
export function sameWeeksBefore(week: IsoWeek, firstWeek: IsoWeek, most = 5): IsoWeek[] {
  return Array.from({ length: most }, (_, back) => sameWeekBefore(week, back + 1)).filter((same) => same >= firstWeek)
}

/**
 * What the same week brought in earlier years.
 * @param sameWeeks of the years on record, from `sameWeeksBefore`: worked out once for all problems of a page
 */
export function earlierYears(counts: CountsByWeek, sameWeeks: readonly IsoWeek[]): EarlierYears {
  const years = sameWeeks.map((week) => ({ week, reports: counts.get(week)?.reports ?? 0 }))
  if (years.length === 0) return { years, usual: null }
  const total = years.reduce((sum, { reports }) => sum + reports, 0)
  const { low, high } = countInterval(total)
  return { years, usual: { mean: total / years.length, low: low / years.length, high: high / years.length } }
}
