import type { SettleTicket } from '../../../shared/index.js'

export type Outcome = SettleTicket['outcome']['kind']

/** How a ticket can end, in the words of the bench. */
export const outcomes: readonly { readonly kind: Outcome, readonly words: string }[] = [
  { kind: 'problem', words: 'A problem of the guide' },
  { kind: 'not known', words: 'Not known' },
  { kind: 'not a plant problem', words: 'Not a plant problem' },
]

/** The end of a ticket as a heading: the problem's name, or the words for having none. */
export function outcomeInWords(outcome: Outcome, problemName: string | null): string {
  if (outcome === 'problem') return problemName ?? 'A problem of the guide'
  return outcomes.find(row => row.kind === outcome)?.words ?? outcome
}
