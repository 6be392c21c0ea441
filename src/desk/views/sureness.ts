import type { DeskWording } from '../wording/index.js'

/**
 * Where each term for a probability begins: the approximate probability scale of the EFSA Scientific Committee (2018),
 * Guidance on uncertainty analysis in scientific assessments, EFSA Journal 16(1):5123. Each term holds from its lower
 * bound up. The terms stand in `wording`, in the same order.
 */
const LOWER_BOUNDS = [0.99, 0.95, 0.90, 0.66, 0.33, 0.10, 0.05, 0.01, 0]

/** The term for a probability of 0 to 1. */
export function surenessOf(probability: number, { sureness }: Pick<DeskWording, 'sureness'>): string {
  const term = sureness[LOWER_BOUNDS.findIndex((from) => probability >= from)]
  if (term === undefined) throw new Error(`A probability is between 0 and 1, not ${probability}.`)
  return term
}
