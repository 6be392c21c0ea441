import type { PublicCounts } from './reports/small-counts.js'

/** What is known of a problem's week. */
export interface WeekOfProblem {
  readonly problem: string
  readonly name: string
  /** The guide's bottom line for it. */
  readonly bottomLine: string
  /** Cases of the week as anyone may see them, by name of district. */
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

/**
 * Drafts a week's note for gardeners, from what anyone may see: a problem whose count is too small is not named. The most
 * reported come first; an unusual rise comes before all others. A specialist reads and changes it before anyone sees it.
 */
export function draftNote(weeks: readonly WeekOfProblem[]): NoteDraft {
  const named = weeks.filter(({ counts }) => counts.total !== null)
    .sort((a, b) => Number(b.isUnusualRise) - Number(a.isUnusualRise) || (b.counts.total ?? 0) - (a.counts.total ?? 0) || (a.name < b.name ? -1 : 1))
    .slice(0, MOST_NAMED)
  if (named.length === 0) return { lead: 'It was a quiet week. Few people asked for help, and nothing stood out.', problems: [] }
  return {
    lead: named.length === 1 ? 'This is what people asked about most.' : 'These are the plant troubles that people asked about most.',
    problems: named.map((week) => ({ problem: week.problem, text: [howMany(week), more(week), week.bottomLine].filter((part) => part !== '').join(' ') })),
  }
}

function howMany({ counts: { total, places } }: WeekOfProblem): string {
  const [first] = places
  const where = first === undefined ? '' : first.count === total ? `, all from ${first.place}` : first.count * 2 > (total ?? 0) ? `, most of them from ${first.place}` : `, many of them from ${first.place}`
  return `We had ${total ?? 0} reports${where}.`
}

function more({ counts: { total }, isUnusualRise, usual }: WeekOfProblem): string {
  if (isUnusualRise) return 'That is unusually many.'
  if (usual === null || total === null) return ''
  return total > usual * MORE_THAN_USUAL ? 'That is more than in other years.' : ''
}
