import type { JobTold } from './job-letters.js'
import type { Matched } from './matched.js'
import { tidyScore } from './score.js'

/** What the certainty of a question's first entry is judged by. */
export interface Signs {
  /** Score of the first entry. */
  readonly score: number
  /** Score of the first entry's host among the hosts heard, 0 when it was not; 1 for a garden job, which needs no plant. */
  readonly host: number
}

/** What the certainty of a question's first entry is judged by. */
export function confidenceSigns({ hosts, entries }: Pick<Matched, 'hosts' | 'entries'>, jobs: ReadonlySet<string>): Signs {
  const [first] = entries
  const isJob = first !== undefined && jobs.has(first.host)
  return { score: first?.score ?? 0, host: isJob ? 1 : hosts.find(({ host }) => host === first?.host)?.score ?? 0 }
}

/**
 * How often an entry with such signs is right: a logistic curve fitted to the tuning questions and to invented letters. 0 to 1.
 * The lead over the second entry was tried too and told nothing more: two entries that fit alike mostly lead to the same
 * problems.
 */
export function confidenceOf({ score, host }: Signs): number {
  const { base, byScore, byHost } = FITTED
  return tidyScore(1 / (1 + Math.exp(-(base + byScore * score + byHost * host))))
}

/** Fitted 2026-11-30 by `tests/bench/fit-confidence.ts` on the tuning two thirds of the development questions and the letters to learn from. */
const FITTED = { base: -2.31, byScore: 4.69, byHost: 1.67 } as const

/**
 * How often the first job is right where a whole letter was weighed for jobs: by how likely it asks for one, and how much
 * of all jobs the likeliest has by the letter alone. A straight line read off 166 real letters of the sixth and
 * seventh sets, and drawn up to fit the 83 of the twelfth that met a job first since the texts of the problems are weighed too.
 */
export function jobConfidence({ share, jobs }: JobTold): number {
  return tidyScore(share * (JOB_BASE + JOB_BY_SHARE * (jobs[0]?.share ?? 0)))
}

const JOB_BASE = 0.57
const JOB_BY_SHARE = 0.43
