/**
 * Words for a probability: the approximate probability scale of the EFSA Scientific Committee (2018), Guidance on
 * uncertainty analysis in scientific assessments, EFSA Journal 16(1):5123. Each term holds from its lower bound up.
 */
const SCALE: readonly (readonly [from: number, term: string])[] = [
  [0.99, 'almost certain'],
  [0.95, 'extremely likely'],
  [0.90, 'very likely'],
  [0.66, 'likely'],
  [0.33, 'about as likely as not'],
  [0.10, 'unlikely'],
  [0.05, 'very unlikely'],
  [0.01, 'extremely unlikely'],
  [0, 'almost impossible'],
]

/** The term for a probability of 0 to 1. */
export function surenessOf(probability: number): string {
  const row = SCALE.find(([from]) => probability >= from)
  if (row === undefined) throw new Error(`A probability is between 0 and 1, not ${probability}.`)
  return row[1]
}
