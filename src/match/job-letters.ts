import type { Guide } from '../guide/index.js'
import type { EntryNode, EntryPhrases } from './entry-phrases.js'
import { pairSigns } from './letter-signs.js'
import type { JobWeights, LetterSign } from './letter-weights.js'
import { WEIGHTS } from './score.js'
import type { Token } from './tokens.js'
import { leaning, shareOf, strongest } from './weighed-letter.js'
import type { Speech } from './languages/speech.js'

/** An entry of a job's tree, as it stands in the index of entry phrases. */
export interface JobEntry {
  readonly node: EntryNode
  readonly number: number
  /** What it is offered as: the job's own name, since the letter need not have the words of any phrase. */
  readonly phrase: string
}

/** The jobs of a guide, each with the entries that lead to it, the most direct first. */
export type JobEntries = ReadonlyMap<string, readonly JobEntry[]>

/** What a letter asks for: how likely a job at all (0 to 1), and the likeliest jobs, best first; none where it hardly asks for one. */
export interface JobTold {
  readonly share: number
  /** `share`: among the jobs, 0 to 1. */
  readonly jobs: readonly { readonly problem: string; readonly share: number; readonly places: readonly number[] }[]
}

/** Finds the entries that lead to each job of the guide: the one with the fewest other ends is the most direct. */
export function buildJobEntries(guide: Guide, { nodes }: EntryPhrases, hosts: ReadonlySet<string>): JobEntries {
  const entries = new Map<string, JobEntry[]>()
  for (const [number, node] of nodes.entries()) {
    if (!hosts.has(node.host)) continue
    for (const id of node.problems) {
      const so = entries.get(id)
      const entry = { node, number, phrase: guide.problems[guide.problemNumbers.get(id) ?? -1]?.name ?? id }
      if (so === undefined) entries.set(id, [entry])
      else so.push(entry)
    }
  }
  for (const list of entries.values()) list.sort((a, b) => a.node.problems.length - b.node.problems.length || a.number - b.number)
  return entries
}

/** Weighs a letter for the jobs that it may ask for. */
export function jobTold({ asks, kinds }: JobWeights, speech: Speech, tokens: readonly Token[], signs: readonly LetterSign[]): JobTold {
  const all = [...signs, ...pairSigns(speech, tokens)]
  // Of words that no letter had nothing can be said.
  if (all.every(({ name }) => !asks.signs.has(name))) return NO_JOB_TOLD
  const share = shareOf(leaning(asks, all, []))
  if (share < WEIGHTS.jobToldLeast) return { share, jobs: [] }
  const each = [...kinds].map(([problem, weights]) => ({ problem, weights, share: shareOf(leaning(weights, signs, [])) })).sort((a, b) => b.share - a.share)
  const shares = each.reduce((sum, one) => sum + one.share, 0)
  return {
    share,
    jobs: each.slice(0, WEIGHTS.jobsLookedAt).map(({ problem, weights, share: own }) => ({
      problem, share: own / shares,
      places: strongest(weights, signs, MOST_QUOTED).map(({ first }) => first).sort((a, b) => a - b),
    })),
  }
}

/** Where nothing is known of a language's letters. */
export const NO_JOB_TOLD: JobTold = { share: 0, jobs: [] }

const MOST_QUOTED = 3
