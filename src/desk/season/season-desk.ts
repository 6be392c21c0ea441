import type { PlausibleTable, ProblemSeason, RiseLine, SeasonSearch, SeasonView, WeekCounts, WeeksSearch } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import { earlierYears, type IsoWeek, isoWeekOf, type RisePlan, risePlan, type RiseVerdict, sameWeekBefore, sameWeeksBefore, unusualRise, weekAfter, weeksBetween } from '../../season/index.js'
import { type CountRow, countReports, firstCountedWeek } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { hostNamed, problemNamed } from '../guide-names.js'
import type { Room } from '../room.js'
import { movedLine } from '../views/moved-line.js'
import { plausibleHere } from './plausible-here.js'

type SeasonRoom = Pick<Room, 'db' | 'knowledge' | 'now'>

/** Weeks of one page, and of a list that says no weeks. */
const WEEKS_SHOWN = 53
const WEEKS_LISTED = 104
/** Earlier years that a week is held against; the outbreak method needs as many. */
const YEARS_BACK = 5

/** Counts by problem, host, district and week. */
export async function weekCounts({ db, knowledge, now }: SeasonRoom, search: WeeksSearch): Promise<WeekCounts> {
  const { guide } = knowledge()
  const until = search.until ?? isoWeekOf(today(now))
  const from = search.from ?? weekAfter(until, 1 - WEEKS_LISTED)
  const counts = await countReports(db, { ...search, from, until })
  return {
    from, until, counts,
    problemNames: named(counts.map(({ problem }) => problem), (id) => problemNamed(guide, id)?.name),
    hostNames: named(counts.map(({ host }) => host), (id) => hostNamed(guide, id)?.name),
  }
}

/** The year of every problem that was reported in it, beside earlier years, with rises marked. */
export async function showSeason({ db, knowledge, now }: SeasonRoom, { district, until: wanted }: SeasonSearch): Promise<SeasonView> {
  const { guide } = knowledge()
  if (district !== undefined) knownDistrict(guide, district)
  const until = weekAfter(wanted ?? isoWeekOf(today(now)), 0)
  const from = weekAfter(until, 1 - WEEKS_SHOWN)
  const first = await firstCountedWeek(db)
  const recordsFrom = first === null ? null : weekAfter(first, 0)
  // Far enough back for the earliest week shown and for every baseline.
  const rows = await countReports(db, { from: weekAfter(sameWeekBefore(from, YEARS_BACK), -12), until, district })
  const byProblem = new Map<string, CountRow[]>()
  for (const row of rows) byProblem.set(row.problem, [...(byProblem.get(row.problem) ?? []), row])
  const weeks = weeksBetween(from, until)
  const beside = recordsFrom === null ? null : {
    weeks: weeks.map((week) => ({ week, sameWeeks: sameWeeksBefore(week, recordsFrom, YEARS_BACK) })), plan: risePlan(until, recordsFrom),
  }
  const problems = [...byProblem].flatMap(([problem, own]) => (
    beside === null || !own.some(({ week }) => week >= from) ? [] : [problemSeason(guide, problem, district ?? null, own, beside)]))
  const lately = ({ weeks: shown }: ProblemSeason) => shown.slice(-4).reduce((sum, { reports }) => sum + reports, 0)
  problems.sort((a, b) => lately(b) - lately(a) || a.name.localeCompare(b.name, 'en'))
  return { district: district ?? null, from, until, recordsFrom, problems }
}

/** What the season moves in a district today, with every reason. */
export async function showPlausible(room: SeasonRoom, district: string): Promise<PlausibleTable> {
  const { guide } = room.knowledge()
  const on = today(room.now)
  const districtName = knownDistrict(guide, district)
  const problems = (await plausibleHere(room, guide, district, on)).map((plausible) => ({
    problem: plausible.problem, name: problemNamed(guide, plausible.problem)?.name ?? plausible.problem, moved: movedLine(plausible),
  }))
  return { district, districtName, on, problems: problems.sort((a, b) => b.moved.factor - a.moved.factor || a.name.localeCompare(b.name, 'en')) }
}

/** What every problem's weeks are held against: worked out once. */
interface Beside {
  readonly weeks: readonly { readonly week: IsoWeek; readonly sameWeeks: readonly IsoWeek[] }[]
  readonly plan: RisePlan
}

function problemSeason(
  guide: Guide, id: string, district: string | null, rows: readonly CountRow[], { weeks, plan }: Beside,
): ProblemSeason {
  const problem = problemNamed(guide, id)
  const byWeek = new Map<string, { reports: number; cases: number; settled: number }>()
  for (const { week, reports, cases, settled } of rows) {
    const so = byWeek.get(week)
    byWeek.set(week, { reports: (so?.reports ?? 0) + reports, cases: (so?.cases ?? 0) + cases, settled: (so?.settled ?? 0) + settled })
  }
  const counts = new Map([...byWeek].map(([week, { reports }]) => [week, reports]))
  return {
    problem: id, name: problem?.name ?? id, watch: problem?.watch != null, district,
    weeks: weeks.map(({ week, sameWeeks }) => {
      const { years, usual } = earlierYears(counts, sameWeeks)
      return { week, ...byWeek.get(week) ?? { reports: 0, cases: 0, settled: 0 }, usual: usual === null ? null : { ...usual, years: years.length } }
    }),
    rise: riseLine(unusualRise(counts, plan)),
  }
}

function riseLine({ method, isUnusual, count, mean, limit, years }: RiseVerdict): RiseLine {
  return { method, unusual: isUnusual, count, mean, limit, years, note: riseNotes[method ?? 'none'] }
}

const riseNotes = {
  'historical limits': 'Historical limits (Stroup and others 1989): the last four weeks against the same weeks, and those before and after, of five earlier years. Unusual above their mean and two standard deviations.',
  'C2': 'C2 (Hutwagner and others 2003): this week against seven weeks that ended three weeks ago. Unusual above their mean and three standard deviations. There are not yet five years to compare, so what comes back each spring looks like a rise.',
  'none': 'There are fewer than nine weeks on record, so nothing can be said of a rise.',
} as const

function named(ids: readonly string[], nameOf: (id: string) => string | undefined): Record<string, string> {
  return Object.fromEntries([...new Set(ids)].map((id) => [id, nameOf(id) ?? id]))
}

function knownDistrict(guide: Guide, district: string): string {
  const name = guide.region.districts.get(district)
  if (name === undefined) throw new DeskFault('UNKNOWN_DISTRICT', { words: { district } })
  return name
}

function today(now: () => Date): string {
  return now().toISOString().slice(0, 10)
}
