import type { CaseView } from '../../../shared/index.js'
import { PLAINLY_NAMED } from './offered-places.js'

/** A case's place with what the matching says of itself. */
type HeardPlace = Pick<CaseView['place'], 'hosts' | 'entries' | 'confidence' | 'outOfScope'>

/** How the words are met when the place is not settled. */
export type Hearing =
  /** The first offer is set apart as the best guess. */
  | 'sure'
  /** The best few are offered alike. */
  | 'unsure'
  /** No plant was heard: it is asked for. */
  | 'no plant'
  /** It is said what can be asked, and the question box is shown again. */
  | 'out of scope'

/** How well the words were heard. Below even odds a guess set apart would lead more people wrong than right. */
export function hearingOf({ hosts, entries, confidence, outOfScope }: HeardPlace): Hearing {
  if (outOfScope) return 'out of scope'
  if (hosts.length === 0 && (entries.length === 0 || confidence < EVEN_ODDS)) return 'no plant'
  // "It is about my hydrangea" tells of no trouble, but the plant is sure.
  if (entries.length === 0 && hosts.some(({ score }) => score >= PLAINLY_NAMED)) return 'sure'
  return confidence < EVEN_ODDS ? 'unsure' : 'sure'
}

const EVEN_ODDS = 0.5
