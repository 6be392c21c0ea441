import { tidyScore } from './score.js'

/** What the certainty of the first entry is judged by. */
export interface Signs {
  /** Score of the first entry. */
  readonly score: number
  /** By how much it leads the next entry that leads elsewhere. */
  readonly margin: number
  /** Score of the first entry's host among the hosts heard, 0 when it was not. */
  readonly host: number
}

/** How often an entry with such signs is right: a logistic curve fitted to the tuning questions. 0 to 1. */
export function confidenceOf({ score, margin, host }: Signs): number {
  const { base, byScore, byMargin, byHost } = FITTED
  return tidyScore(1 / (1 + Math.exp(-(base + byScore * score + byMargin * margin + byHost * host))))
}

/** Fitted 2026-11-25 by `tests/bench/fit-confidence.ts` on the tuning two thirds of the development questions. */
const FITTED = { base: -1, byScore: 5, byMargin: 2, byHost: 1 } as const
