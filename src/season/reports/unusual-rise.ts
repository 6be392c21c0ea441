import { type IsoWeek, sameWeekBefore, weekAfter } from './iso-week.js'

/** Reports of one problem in one place by week; weeks without any are left out. */
export type CountsByWeek = ReadonlyMap<string, { readonly reports: number }>

/** Whether a week's reports rise unusually, and by which method. */
export interface RiseVerdict {
  /** Null when there are too few records to say anything. */
  readonly method: 'historical limits' | 'C2' | null
  readonly isUnusual: boolean
  /** What was counted: of four weeks for historical limits, of the one week for C2. */
  readonly count: number
  /** Mean of what it is held against, and the limit above which it is unusual; null without a method. */
  readonly mean: number | null
  readonly limit: number | null
  /** Whole earlier years on record. */
  readonly years: number
}

const YEARS = 5
/** Weeks of one period. */
const PERIOD = 4
/** Weeks of C2's baseline, and weeks left out between it and the week looked at. */
const BASELINE = 7
const GAP = 2
/** Standard deviations above the mean: two for historical limits, three for C2, as published. */
const DEVIATIONS = { 'historical limits': 2, C2: 3 } as const
/** Of fewer reports nothing is called a rise: one report after none is a first report, and is told as such. Our judgement. */
const FEWEST = 2
/**
 * A baseline of nothing has no spread, and then a single report would be a rise. The spread is taken for at least a
 * half (the setting `minSigma` of the R package surveillance, recommended there for sparse counts).
 */
const LEAST_DEVIATION = 0.5

/**
 * Whether the reports of a week are unusually many.
 *
 * With five whole years on record, by historical limits (Stroup, Williamson, Herndon & Karon 1989, Statistics in Medicine
 * 8:323-329): the last four weeks against the fifteen like periods of the five years before, the same four weeks and the
 * four before and after them; unusual above their mean plus two standard deviations.
 *
 * With fewer, by the method C2 of the Early Aberration Reporting System (Hutwagner et al. 2003, Journal of Urban Health
 * 80:i89-i96): the week against the seven weeks that ended three weeks before; unusual above their mean plus three
 * standard deviations. It knows no season: where a problem comes back every spring, the first weeks are called a rise.
 *
 * With fewer than nine weeks on record, nothing is said.
 * @param plan from `risePlan`
 */
export function unusualRise(counts: CountsByWeek, { method, periods, now, years }: RisePlan): RiseVerdict {
  const count = totalOf(counts, now)
  if (method === null) return { method, isUnusual: false, count, mean: null, limit: null, years }
  const baseline = periods.map((period) => totalOf(counts, period))
  const mean = baseline.reduce((sum, value) => sum + value, 0) / baseline.length
  const variance = baseline.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (baseline.length - 1)
  const limit = mean + DEVIATIONS[method] * Math.max(LEAST_DEVIATION, Math.sqrt(variance))
  return { method, isUnusual: count > limit && count >= FEWEST, count, mean, limit, years }
}

/** Which weeks are held against which, by the method that the records allow. */
export interface RisePlan {
  readonly method: RiseVerdict['method']
  /** The weeks of each period of the baseline. */
  readonly periods: readonly (readonly IsoWeek[])[]
  /** The weeks looked at. */
  readonly now: readonly IsoWeek[]
  readonly years: number
}

/**
 * Works out, once for all problems of a page, what a week is held against.
 * @param firstWeek when the records begin: a week after it that is left out of the counts had no report
 */
export function risePlan(week: IsoWeek, firstWeek: IsoWeek): RisePlan {
  const years = wholeYears(week, firstWeek)
  if (years >= YEARS) {
    const periods = Array.from({ length: YEARS }, (_, back) => sameWeekBefore(week, back + 1))
      .flatMap((same) => [-PERIOD, 0, PERIOD].map((shift) => periodOf(weekAfter(same, shift))))
    return { method: 'historical limits', periods, now: periodOf(week), years }
  }
  if (firstWeek > weekAfter(week, -(BASELINE + GAP))) return { method: null, periods: [], now: [week], years }
  return { method: 'C2', periods: Array.from({ length: BASELINE }, (_, back) => [weekAfter(week, -GAP - 1 - back)]), now: [week], years }
}

/** The four weeks that end with this one. */
function periodOf(week: IsoWeek): IsoWeek[] {
  return Array.from({ length: PERIOD }, (_, back) => weekAfter(week, -back))
}

function totalOf(counts: CountsByWeek, weeks: readonly IsoWeek[]): number {
  return weeks.reduce((sum, week) => sum + (counts.get(week)?.reports ?? 0), 0)
}

/** Years before this week for which the whole baseline is on record. */
function wholeYears(week: IsoWeek, firstWeek: IsoWeek): number {
  let years = 0
  while (years < YEARS && firstWeek <= weekAfter(sameWeekBefore(week, years + 1), -2 * PERIOD + 1)) years++
  return years
}
