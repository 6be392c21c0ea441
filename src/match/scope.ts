import type { LayWords } from '../guide/index.js'
import type { HeardPlace } from './place.js'
import { WEIGHTS } from './score.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/** What tells questions for a plant helpline from others. */
export interface ScopeEar {
  readonly errands: PatternIndex
}

/** Makes the guide's errands ready. Small words count: "buy a" is not heard in every "buy". */
export function buildScopeEar({ errands }: LayWords): ScopeEar {
  return { errands: buildPatternIndex([errands], 'kept') }
}

/**
 * True where nothing was heard that a tree could answer: no plant and no complaint, or an errand ("what time do you
 * open") with no complaint to speak of. A red flag is never out of scope; the caller sees to that.
 */
export function isOutOfScope(ear: ScopeEar, tokens: readonly Token[], { named, entries }: HeardPlace): boolean {
  const best = entries[0]?.score ?? 0
  const errand = findGroups(tokens, ear.errands).size > 0
  if (errand) return best < WEIGHTS.scopeDespiteErrand
  return named < WEIGHTS.hostLeast && best < WEIGHTS.scopeWithoutPlant
}

