import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { redFlagNamed } from '../guide-names.js'
import type { KeptEvidence } from './case-file.js'

/**
 * Keeps every card that an answer has raised, so that it stays even if the answer is changed later; and takes back
 * 'carry on' when a card appears that must be seen before anything goes on.
 * @param before the evidence before the change: it names every card shown so far
 * @param after the evidence with the change
 * @param cards the cards of the reading of `after`
 */
export function keepCards(
  guide: Guide, before: KeptEvidence, after: KeptEvidence, cards: Reading['cards'],
): KeptEvidence {
  return {
    ...after,
    redFlags: [...new Set([...after.redFlags, ...cards])],
    carriedOn: after.carriedOn && !isNewDanger(guide, before, cards),
  }
}

/** Whether a card has appeared that must be seen before anything goes on. */
export function isNewDanger(guide: Guide, before: KeptEvidence, cards: Reading['cards']): boolean {
  return cards.some((name) => {
    const flag = redFlagNamed(guide, name)
    return flag !== null && !before.redFlags.includes(name) && (flag.level === 'emergency' || flag.then === 'stop')
  })
}
