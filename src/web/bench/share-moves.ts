import type { LikelyLine } from '../../../shared/index.js'

export interface ShareMove {
  readonly from: number
  readonly up: boolean
}

/** The causes whose share moved by at least `least` between two differentials, by problem; none when there is no earlier one. */
export function shareMoves(
  before: readonly LikelyLine[] | null, now: readonly LikelyLine[], least = 0.02,
): ReadonlyMap<string | null, ShareMove> {
  const moves = new Map<string | null, ShareMove>()
  if (before === null) return moves
  for (const { problem, probability } of now) {
    const from = before.find(line => line.problem === problem)?.probability ?? 0
    if (Math.abs(probability - from) >= least) moves.set(problem, { from, up: probability > from })
  }
  return moves
}
