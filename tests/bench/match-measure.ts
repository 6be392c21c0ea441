import { type Guide, isJobHost } from '../../src/guide/index.js'
import type { Question } from '../match/questions/read-questions.js'

/** What any matcher heard in a question, as far as it is measured. Lists are best first. */
export interface Answered {
  readonly redFlags: readonly string[]
  readonly hosts: readonly string[]
  readonly entries: readonly { readonly host: string; readonly node: string; readonly problems: readonly string[] }[]
  readonly findings: readonly { readonly check: string; readonly answer: string }[]
  /** Null where the matcher gives none. */
  readonly confidence: number | null
  readonly outOfScope: boolean
}

/** Shares are 0 to 1; null where nothing was asked for. The definitions stand in tests/bench/README.md. */
export interface Figures {
  readonly questions: number
  readonly host: number
  readonly top1: number
  readonly top3: number
  readonly meanReciprocalRank: number
  readonly telling1: number
  readonly redFlagRecall: number
  readonly redFlagFalseAlarms: number
  readonly findingsPrecision: number | null
  /** The same, with the findings that a reader of the tuning questions found said besides (`alsoSaid`) counted as right. */
  readonly findingsPrecisionRead: number | null
  readonly findingsContradicted: number | null
  readonly findingsRecall: number
  readonly outOfScopeHeard: number
  readonly wronglyOutOfScope: number
}

const UNKNOWN_PLANT = 'unknown-plant'
const ENTRIES_RANKED = 8

/** How many entries down the first right one stands, from 1; null when it is not among the first eight. */
export function rightEntryAt(guide: Guide, question: Question, { entries }: Answered, telling = false): number | null {
  const place = entries.slice(0, ENTRIES_RANKED).findIndex((entry) => isRightEntry(guide, question, entry, telling))
  return place < 0 ? null : place + 1
}

/** Whether an entry is right, or with `telling` also narrow: at most half of the problems of its host. */
export function isRightEntry(guide: Guide, question: Question, entry: Answered['entries'][number], telling: boolean): boolean {
  const host = guide.hosts[guide.hostNumbers.get(entry.host) ?? -1]
  // A job stands in its own tree, whatever plant it is to be done to.
  const hostRight = question.host === null || entry.host === question.host || (host !== undefined && isJobHost(guide, host))
  if (!hostRight || !question.problems.some((problem) => entry.problems.includes(problem))) return false
  if (!telling) return true
  const own = new Set([...(host?.problems ?? [])].map((number) => guide.problems[number]?.id as string))
  return entry.problems.filter((problem) => own.has(problem)).length <= own.size / 2
}

/** Whether the plant is right: the same, or none or the unknown plant where none can be told. */
export function isRightHost(question: Question, { hosts }: Answered): boolean {
  const [first = UNKNOWN_PLANT] = hosts
  return first === (question.host ?? UNKNOWN_PLANT)
}

/** Measures a matcher on questions it has answered. */
export function measure(guide: Guide, answered: readonly { readonly question: Question; readonly heard: Answered }[]): Figures {
  const inScope = answered.filter(({ question }) => !question.outOfScope)
  const outside = answered.filter(({ question }) => question.outOfScope)
  const withTruth = inScope.filter(({ question }) => question.problems.length > 0)
  const ranks = withTruth.map(({ question, heard }) => rightEntryAt(guide, question, heard))
  const flagged = answered.filter(({ question }) => question.redFlags.length > 0)
  const quiet = answered.filter(({ question }) => question.redFlags.length === 0)
  const heardFindings = inScope.flatMap(({ question, heard }) => heard.findings.map(({ check, answer }) => ({ answer, said: question.findings[check], also: question.alsoSaid?.[check] })))
  const said = inScope.reduce((sum, { question }) => sum + Object.keys(question.findings).length, 0)
  const agreeing = heardFindings.filter((finding) => finding.said === finding.answer).length
  const agreeingRead = heardFindings.filter((finding) => finding.said === finding.answer || finding.also === finding.answer).length
  const contradicted = heardFindings.filter((finding) => finding.said !== undefined && finding.said !== finding.answer).length
  return {
    questions: answered.length,
    host: share(inScope, ({ question, heard }) => isRightHost(question, heard)),
    top1: share(ranks, (rank) => rank === 1),
    top3: share(ranks, (rank) => rank !== null && rank <= 3),
    meanReciprocalRank: ranks.reduce<number>((sum, rank) => sum + (rank === null ? 0 : 1 / rank), 0) / Math.max(1, ranks.length),
    telling1: share(withTruth, ({ question, heard }) => {
      const [first] = heard.entries
      return first !== undefined && isRightEntry(guide, question, first, true)
    }),
    redFlagRecall: share(flagged, ({ question, heard }) => question.redFlags.every((flag) => heard.redFlags.includes(flag))),
    redFlagFalseAlarms: share(quiet, ({ question, heard }) => heard.redFlags.some((flag) => !(question.redFlagsAllowed ?? []).includes(flag))),
    findingsPrecision: heardFindings.length === 0 ? null : agreeing / heardFindings.length,
    findingsPrecisionRead: heardFindings.length === 0 ? null : agreeingRead / heardFindings.length,
    findingsContradicted: heardFindings.length === 0 ? null : contradicted / heardFindings.length,
    findingsRecall: said === 0 ? 0 : agreeing / said,
    outOfScopeHeard: share(outside, ({ heard }) => heard.outOfScope),
    wronglyOutOfScope: share(inScope, ({ heard }) => heard.outOfScope),
  }
}

function share<Item>(items: readonly Item[], holds: (item: Item) => boolean): number {
  return items.length === 0 ? 0 : items.filter(holds).length / items.length
}
