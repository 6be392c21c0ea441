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
 * How often an entry with such signs is right: a logistic curve fitted to the tuning questions. 0 to 1.
 * The lead over the second entry was tried too and told nothing more: two entries that fit alike mostly lead to the same
 * problems.
 */
export function confidenceOf({ score, host }: Signs): number {
  const { base, byScore, byHost } = FITTED
  return tidyScore(1 / (1 + Math.exp(-(base + byScore * score + byHost * host))))
}

/** Fitted 2026-11-28 by `tests/bench/fit-confidence.ts` on the tuning two thirds of the development questions. */
const FITTED = { base: -3.47, byScore: 4.45, byHost: 3.56 } as const
