import type { Guide, Problem } from '../guide/index.js'
import {
  LEAST_FACTOR, LEAST_FACTOR_OF_WATCH, LEAST_TOLD, MOST_BY_REPORTS, MOST_FACTOR, presenceFactors, RECENT_WEEKS, REPORTS_THE_GUIDE_WEIGHS,
} from './factors.js'
import type { Move, MoveReason } from './move.js'
import { type PresenceChange, presenceOn } from './presence.js'
import { isoWeekOf } from './reports/iso-week.js'
import type { WeeklyCount } from './reports/weekly-counts.js'
import { weatherFactor, weatherMoves } from './weather/moves.js'
import type { WeatherSummary } from './weather/summary.js'

/** Recent reports of one problem on one host in one week. */
type Recent = Pick<WeeklyCount, 'problem' | 'host' | 'reports' | 'cases'> & { readonly week: string }

/** What is known of a district on a day. */
export interface SeasonHere {
  readonly district: string
  /** ISO date. */
  readonly on: string
  /** Reports in the district in the recent weeks, whatever the host. */
  readonly recent: readonly Recent[]
  /** Everything said of watch problems, in the order in which it was said. */
  readonly presence: readonly PresenceChange[]
  /** What the station of the district has recorded; null where there is none. */
  readonly weather: WeatherSummary | null
}

/** How much more or less likely a problem is here and now, and why. */
export interface Plausible {
  readonly problem: string
  /** What its prior is multiplied by, between LEAST_FACTOR and MOST_FACTOR. */
  readonly factor: number
  readonly reasons: readonly MoveReason[]
}

/**
 * Every problem that the season moves in a district, in the guide's order. What is not named stays as it is; with nothing
 * known nothing is named.
 */
export function plausibilities(guide: Guide, here: SeasonHere): Plausible[] {
  const expected = expectedReports(guide, here.recent)
  const reported = new Map<string, Recent[]>()
  for (const one of here.recent) reported.set(one.problem, [...(reported.get(one.problem) ?? []), one])
  return guide.problems.flatMap((problem) => {
    const moves = [...presenceMoves(guide, problem, here), ...reportMoves(guide, problem, here, reported.get(problem.id) ?? [], expected)]
    const weather = here.weather === null ? [] : weatherMoves(problem, here.weather)
    const told = [...moves, ...weather].filter(({ factor }) => Math.abs(factor - 1) >= LEAST_TOLD)
    return told.length === 0 ? [] : [{
      problem: problem.id,
      // The weather has caps of its own, so that many kinds of it do not add up to more than what people saw.
      factor: cappedFactor(problem.watch !== null, [...moves.map(({ factor }) => factor), weatherFactor(weather)]),
      reasons: told.map(({ reason: { code, values } }) => ({ code, values })),
    }]
  })
}

/** The product of the factors, held within what the season may say. */
export function cappedFactor(isWatch: boolean, factors: readonly number[]): number {
  const product = factors.reduce((whole, factor) => whole * factor, 1)
  return Math.min(MOST_FACTOR, Math.max(isWatch ? LEAST_FACTOR_OF_WATCH : LEAST_FACTOR, product))
}

function presenceMoves(guide: Guide, problem: Problem, { district, on, presence }: SeasonHere): Move[] {
  if (problem.watch === null) return []
  const changes = presence.filter((change) => change.problem === problem.id)
  const stands = presenceOn(changes, district, guide.region.beside.get(district) ?? [], on)
  if (stands === null) return []
  const reason = stands.beside === null
    ? { code: 'presence', values: { state: stands.state, district: districtName(guide, district), on: stands.on } }
    : { code: 'presence beside', values: { district: districtName(guide, stands.beside), on: stands.on } }
  return [{ factor: presenceFactors[stands.state], reason }]
}

/**
 * How much more of a problem was reported than the guide's shares lead one to expect: (n + k) / (e + k), the ratio
 * drawn towards 1 as a gamma prior of weight k draws a relative risk (Clayton & Kaldor 1987, Biometrics 43:671-681,
 * from memory), and capped.
 */
function reportMoves(
  guide: Guide, problem: Problem, { district, on }: SeasonHere, own: readonly Recent[], expected: ReadonlyMap<number, number>,
): Move[] {
  const count = own.reduce((sum, { reports }) => sum + reports, 0)
  const ratio = (count + REPORTS_THE_GUIDE_WEIGHS) / ((expected.get(problem.number) ?? 0) + REPORTS_THE_GUIDE_WEIGHS)
  if (own.length === 0 || ratio <= 1) return []
  const thisWeek = isoWeekOf(on)
  const cases = own.reduce((sum, one) => sum + one.cases, 0)
  return [{
    factor: Math.min(MOST_BY_REPORTS, ratio),
    reason: {
      code: own.every(({ week }) => week === thisWeek) ? 'reports this week' : 'reports lately',
      values: { count: cases, weeks: RECENT_WEEKS, district: districtName(guide, district) },
    },
  }]
}

/** Reports of each problem, by number, were all the recent ones spread as the guide says how common problems are. */
function expectedReports(guide: Guide, recent: SeasonHere['recent']): Map<number, number> {
  const onHost = new Map<string, number>()
  for (const { host, reports } of recent) onHost.set(host, (onHost.get(host) ?? 0) + reports)
  const expected = new Map<number, number>()
  for (const [name, reports] of onHost) {
    const host = guide.hosts[guide.hostNumbers.get(name) ?? -1]
    host?.problems.forEach((problem, row) => {
      expected.set(problem, (expected.get(problem) ?? 0) + reports * (host.commonness[row] ?? 0))
    })
  }
  return expected
}

function districtName(guide: Guide, district: string): string {
  return guide.region.districts.get(district) ?? district
}
