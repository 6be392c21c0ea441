import type { Check, Guide, Host } from '../guide/index.js'
import { laterEfforts, LEAST_GAIN_BITS } from './bars.js'
import type { Belief } from './belief.js'
import type { Evidence } from './evidence.js'

/** A check that could still tell the problems apart. */
export interface Offer {
  readonly check: Check
  /** The check's place in its host's list. */
  readonly place: number
  readonly gainBits: number
  /** Gain per effort, by which offers are ranked. */
  readonly worth: number
}

/**
 * The checks not yet answered that could still tell the problems apart, the most worth asking first:
 * expected information gain divided by the trouble of the look.
 */
export function openChecks(guide: Guide, host: Host, belief: Belief, evidence: Evidence): Offer[] {
  const answered = new Set<string>(evidence.findings.map(({ check }) => check))
  const offers: Offer[] = []
  host.checks.forEach((number, place) => {
    const check = guide.checks[number]
    if (check === undefined || answered.has(check.id)) return
    const gainBits = belief.gainBits(place)
    if (gainBits < LEAST_GAIN_BITS) return
    offers.push({ check, place, gainBits, worth: gainBits / (belief.model.checks[place]?.effort ?? 1) })
  })
  return offers.sort((a, b) => b.worth - a.worth || a.place - b.place)
}

/** The offers that can be asked on the spot. */
export function askable(offers: readonly Offer[]): Offer[] {
  return offers.filter(({ check }) => !laterEfforts.includes(check.effort))
}
