import { CANT_LOOK, NOT_SURE } from '../guide/index.js'
import { LEAST_HOPED_BITS, MOST_UNSEEN, MOST_UNSEEN_AT_ALL } from './bars.js'
import type { Evidence } from './evidence.js'
import { askable, type Offer } from './open-checks.js'

/**
 * Whether it is kinder to stop asking: of the checks asked, the asker could not see MOST_UNSEEN more than they could, and
 * what the best check left would tell, times the chance that they see it, is little. That chance is estimated from what
 * they saw so far by Laplace's rule of succession, (seen + 1) / (asked + 2). One check more unseen ends it in any case. Counted over the whole case, so that the order
 * of findings does not matter.
 */
export function isOutOfSight({ findings }: Evidence, open: readonly Offer[]): boolean {
  const asked = findings.filter(({ from }) => from === 'asked')
  const unseen = asked.filter(({ answer }) => answer === NOT_SURE || answer === CANT_LOOK).length
  const seen = asked.length - unseen
  if (unseen - seen < MOST_UNSEEN) return false
  if (unseen - seen >= MOST_UNSEEN_AT_ALL) return true
  const best = Math.max(0, ...askable(open).map(({ gainBits }) => gainBits))
  return best * (seen + 1) / (asked.length + 2) < LEAST_HOPED_BITS
}
