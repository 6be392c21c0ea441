import type { Belief } from './belief.js'

/** A check that could still tell the problems apart. */
export interface Ranked {
  /** The check's place in the model. */
  readonly place: number
  readonly gainBits: number
  /** Gain per effort, by which checks are ranked. */
  readonly worth: number
}

/** The open checks, the most worth asking first: expected information gain divided by the trouble of the look. */
export function rankChecks(belief: Belief, isOpen: (place: number) => boolean, leastBits: number): Ranked[] {
  const ranked: Ranked[] = []
  belief.model.checks.forEach(({ effort }, place) => {
    if (!isOpen(place)) return
    const gainBits = belief.gainBits(place)
    if (gainBits >= leastBits) ranked.push({ place, gainBits, worth: gainBits / effort })
  })
  return ranked.sort((a, b) => b.worth - a.worth || a.place - b.place)
}
