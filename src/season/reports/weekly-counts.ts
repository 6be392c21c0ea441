import { type IsoWeek, isoWeekOf } from './iso-week.js'
import { repeatsAmong } from './repeats.js'
import type { Report } from './report.js'

/** What was reported of one problem on one host in one district in one week. */
export interface WeeklyCount {
  readonly problem: string
  readonly host: string
  readonly district: string | null
  readonly week: IsoWeek
  /** Reports by weight. */
  readonly reports: number
  /** Cases behind them, and of those the settled ones. */
  readonly cases: number
  readonly settled: number
}

/** Counts reports by problem, host, district and ISO week, repeats of one asker once; in that order, weeks last. */
export function weeklyCounts(reports: readonly Report[]): WeeklyCount[] {
  const repeats = repeatsAmong(reports)
  const counts = new Map<string, WeeklyCount>()
  for (const { caseId, problem, host, district, askedOn, basis, weight } of reports) {
    if (repeats.has(caseId)) continue
    const week = isoWeekOf(askedOn)
    const key = JSON.stringify([problem, host, district, week])
    const before = counts.get(key)
    counts.set(key, {
      problem, host, district, week, reports: (before?.reports ?? 0) + weight, cases: (before?.cases ?? 0) + 1,
      settled: (before?.settled ?? 0) + (basis === 'settled' ? 1 : 0),
    })
  }
  return [...counts].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, count]) => count)
}
