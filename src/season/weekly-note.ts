import type { PublicCounts } from './reports/small-counts.js'

/** What is known of a problem's week. */
export interface WeekOfProblem {
  readonly problem: string
  readonly name: string
  /** The guide's bottom line for it. */
  readonly bottomLine: string
  /** Cases of the week as anyone may see them, by district. */
  readonly counts: PublicCounts
  readonly isUnusualRise: boolean
  /** Mean of the same week in earlier years; null without one on record. */
  readonly usual: number | null
}

/** A note in plain text: a line to begin with, then one text a problem. */
export interface NoteDraft {
  readonly lead: string
  readonly problems: readonly { readonly problem: string; readonly text: string }[]
}

/** So many problems are named: a note is read in two minutes. */
const MOST_NAMED = 6
/** From so many times the usual number on, it is called more than usual. Our judgement; it is no test of significance. */
const MORE_THAN_USUAL = 1.5
/** From such a share on, a district is spoken of as having many of the reports. Our judgement. */
const MANY = 1 / 3

/**
 * Drafts a week's note for gardeners, from what anyone may see: a problem whose count is too small is not named. The most
 * reported come first; an unusual rise comes before all others. A specialist reads and changes it before anyone sees it.
 * @param districts names of the districts; a place that has none here is not spoken of
 */
export function draftNote(weeks: readonly WeekOfProblem[], districts: ReadonlyMap<string, string>): NoteDraft {
  const named = weeks.filter(({ counts }) => counts.total !== null)
    .sort((a, b) => Number(b.isUnusualRise) - Number(a.isUnusualRise) || (b.counts.total ?? 0) - (a.counts.total ?? 0) || (a.name < b.name ? -1 : 1))
    .slice(0, MOST_NAMED)
  if (named.length === 0) return { lead: 'It was a quiet week. Few people asked for help, and nothing stood out.', problems: [] }
  return {
    lead: named.length === 1 ? 'This is what people asked about most.' : 'These are the plant troubles that people asked about most.',
    problems: named.map((week) => ({ problem: week.problem, text: [howMany(week, districts), more(week), week.bottomLine].filter((part) => part !== '').join(' ') })),
  }
}

function howMany({ counts: { total, places } }: WeekOfProblem, districts: ReadonlyMap<string, string>): string {
  const sum = total ?? 0
  const first = places.find(({ place }) => districts.has(place))
  if (first === undefined || first.count < sum * MANY) return `We had ${sum} reports.`
  const share = first.count === sum ? 'all' : first.count * 2 > sum ? 'most of them' : 'many of them'
  return `We had ${sum} reports, ${share} from ${districts.get(first.place) ?? first.place}.`
}

function more({ counts: { total }, isUnusualRise, usual }: WeekOfProblem): string {
  if (isUnusualRise) return 'That is unusually many.'
  if (usual === null || total === null) return ''
  return total > usual * MORE_THAN_USUAL ? 'That is more than in other years.' : ''
}
