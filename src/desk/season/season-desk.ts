import type { PlausibleTable, RiseLine, SeasonSearch, SeasonView, WeekCounts, WeeksSearch } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import { earlierYears, isoWeekOf, mondayOfWeek, risePlan, type RiseVerdict, sameWeekBefore, sameWeeksBefore, unusualRise, weekAfter, weeksBetween } from '../../season/index.js'
import { type CountRow, countReports, firstCountedWeek, hasInventedSeason } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { hostNamed, problemNamed } from '../guide-names.js'
import type { Room } from '../room.js'
import { movedLine } from '../views/moved-line.js'
import { plausibleHere } from './plausible-here.js'

type SeasonRoom = Pick<Room, 'db' | 'knowledge' | 'now'>

/** Weeks of one page, and of a list that says no weeks. */
const WEEKS_SHOWN = 53
const WEEKS_LISTED = 104
/** More would be no page to look at; any one problem may be asked for. */
const MOST_SHOWN = 60
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

/** The year of the problems that were reported in it, beside earlier years, with rises marked. */
export async function showSeason({ db, knowledge, now }: SeasonRoom, { district, problem, until: wanted }: SeasonSearch): Promise<SeasonView> {
  const { guide } = knowledge()
  if (district !== undefined) knownDistrict(guide, district)
  const thisWeek = isoWeekOf(today(now))
  const until = weekAfter(wanted ?? thisWeek, 0)
  const from = weekAfter(until, 1 - WEEKS_SHOWN)
  const first = await firstCountedWeek(db)
  const recordsFrom = first === null ? null : weekAfter(first, 0)
  const none = {
    district: district ?? null, from, until, monday: mondayOfWeek(until), weekBefore: weekAfter(until, -1),
    weekAfter: until < thisWeek ? weekAfter(until, 1) : null, invented: await hasInventedSeason(db), recordsFrom, problems: [], more: 0,
  }
  if (recordsFrom === null) return none
  // Far enough back for the earliest week shown and for every baseline.
  const rows = await countReports(db, { from: weekAfter(sameWeekBefore(from, YEARS_BACK), -12), until, district, problem })
  const plan = risePlan(until, recordsFrom)
  const month = weekAfter(until, -3)
  const ranked = [...byProblem(rows)].flatMap(([id, weeks]) => {
    const total = (since: string) => [...weeks].reduce((sum, [week, { reports }]) => (week >= since ? sum + reports : sum), 0)
    const year = total(from)
    return year === 0 ? [] : [{ id, weeks, rise: unusualRise(weeks, plan), year, lately: total(month) }]
  }).sort((a, b) => Number(b.rise.isUnusual) - Number(a.rise.isUnusual) || b.lately - a.lately || b.year - a.year || (a.id < b.id ? -1 : 1))
  const shown = weeksBetween(from, until).map((week) => ({ week, sameWeeks: sameWeeksBefore(week, recordsFrom, YEARS_BACK) }))
  return {
    ...none, more: Math.max(0, ranked.length - MOST_SHOWN),
    problems: ranked.slice(0, MOST_SHOWN).map(({ id, weeks, rise }) => ({
      problem: id, name: problemNamed(guide, id)?.name ?? id, watch: problemNamed(guide, id)?.watch != null, district: district ?? null,
      weeks: shown.map(({ week, sameWeeks }) => {
        const { years, usual } = earlierYears(weeks, sameWeeks)
        return { week, monday: mondayOfWeek(week), ...weeks.get(week) ?? NOTHING, usual: usual === null ? null : { ...usual, years: years.length } }
      }),
      rise: riseLine(rise),
    })),
  }
}

/** What the season moves in a district today, with every reason. */
export async function showPlausible(room: SeasonRoom, district: string): Promise<PlausibleTable> {
  const { guide } = room.knowledge()
  const on = today(room.now)
  const districtName = knownDistrict(guide, district)
  const problems = (await plausibleHere(room, guide, district, on)).map((plausible) => ({
    problem: plausible.problem, name: problemNamed(guide, plausible.problem)?.name ?? plausible.problem, moved: movedLine(guide, plausible),
  }))
  return { district, districtName, on, problems: problems.sort((a, b) => b.moved.factor - a.moved.factor || a.name.localeCompare(b.name, 'en')) }
}

interface WeekTotal { readonly reports: number; readonly cases: number; readonly settled: number }
const NOTHING: WeekTotal = { reports: 0, cases: 0, settled: 0 }

/** The weeks of each problem, plants and districts together. */
function byProblem(rows: readonly CountRow[]): Map<string, Map<string, WeekTotal>> {
  const problems = new Map<string, Map<string, WeekTotal>>()
  for (const { problem, week, reports, cases, settled } of rows) {
    const weeks = problems.get(problem) ?? new Map<string, WeekTotal>()
    problems.set(problem, weeks)
    const so = weeks.get(week) ?? NOTHING
    weeks.set(week, { reports: so.reports + reports, cases: so.cases + cases, settled: so.settled + settled })
  }
  return problems
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
