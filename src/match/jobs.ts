import { type Guide, isJobHost } from '../guide/index.js'
import { patternInSingular, tokensInSingular } from './kinds.js'
import type { Speech } from './languages/speech.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/** What a question after a job is heard with: when to prune, how to move a plant, what to feed. */
export interface JobEars {
  /** The hosts that are jobs: every problem in them is one. */
  readonly hosts: ReadonlySet<string>
  readonly words: PatternIndex
  readonly speech: Speech
}

/** The kinds of lay words by which somebody asks how or when, and names a job. */
const ASKING = 'asks how'
const JOBS = 'jobs'

/** Gathers the jobs of a guide and the words in which they are asked for. A guide without such words hears none. */
export function buildJobEars(guide: Guide, speech: Speech): JobEars {
  const wordsOf = (kind: string): readonly string[] => (guide.layWords.kinds.get(kind) ?? []).map((pattern) => patternInSingular(speech, pattern))
  return {
    hosts: new Set(guide.hosts.filter((host) => isJobHost(guide, host)).map(({ id }) => id)),
    words: buildPatternIndex([wordsOf(ASKING), wordsOf(JOBS)], 'kept'), speech,
  }
}

/**
 * True where somebody asks how or when to do a job: a word of asking with a word for a job close by. "I pruned it and now
 * the leaves are brown" asks for none.
 */
export function asksForJob({ words, speech }: JobEars, tokens: readonly Token[]): boolean {
  const found = findGroups(tokensInSingular(speech, tokens), words)
  const asking = found.get(0) ?? []
  return (found.get(1) ?? []).some((job) => asking.some(({ first, last }) => (job.first >= first ? job.first - last <= AFTER : first - job.last <= BEFORE)))
}

/** Words between the asking and the job: "when is the best time of the year to prune", and "my roses need pruning, when". */
const AFTER = 7
const BEFORE = 8
