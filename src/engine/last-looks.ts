import { CANT_LOOK, type Check, NOT_SURE } from '../guide/index.js'
import { LEAST_FINDINGS, LEAST_LAST_LOOK_BITS, MOST_CHECKS, MOST_LAST_LOOKS, MOST_TURN_TO_NOT_LISTED } from './bars.js'
import { askedBeyondTree, isEasy } from './beyond-tree.js'
import type { CaseState } from './case-state.js'
import { isGraveLikely } from './grave.js'
import { countLooks } from './looks.js'
import { notListedPrior } from './priors.js'

/**
 * The look to ask for before a case that the tree hands over goes to a specialist, or null when it should go now. At most
 * MOST_LAST_LOOKS easy looks are asked, so that the specialist finds the evidence gathered and the likelier cause first;
 * they change what is handed over, never that it is. None is asked where something regulated or dangerous is likely,
 * since the tree's words may warn of it; none after one that the asker could not see; none where little is known yet, or
 * where the answers speak for something that the guide does not list (looks for what it lists are then beside the point).
 */
export function lastLook(state: CaseState): Check | null {
  const { guide, evidence, walk: { host }, sightings, shares, open } = state
  if (countLooks(evidence.findings) >= MOST_CHECKS || isGraveLikely(guide, host, shares)) return null
  if (sightings.length < LEAST_FINDINGS || oddsOf(shares.at(-1) ?? 1) >= MOST_TURN_TO_NOT_LISTED * oddsOf(notListedPrior(host))) return null
  const beyond = askedBeyondTree(state)
  if (beyond.some(({ answer }) => answer === NOT_SURE || answer === CANT_LOOK)) return null
  if (beyond.length >= MOST_LAST_LOOKS) return null
  const best = open.find(({ check, gainBits }) => isEasy(check) && gainBits >= LEAST_LAST_LOOK_BITS)
  return best?.check ?? null
}

function oddsOf(share: number): number {
  return share / (1 - share)
}
