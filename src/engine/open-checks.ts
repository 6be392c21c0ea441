import type { Check, Guide, Host } from '../guide/index.js'
import { laterEfforts, LEAST_GAIN_BITS } from './bars.js'
import type { Belief } from './belief.js'
import type { Evidence } from './evidence.js'
import type { PassedOver } from './passed-over.js'
import { rankChecks, type Ranked } from './rank-checks.js'

/** A check of the guide that could still tell the problems apart. */
export interface Offer extends Ranked {
  readonly check: Check
}

const NONE: PassedOver = new Map()

/**
 * The checks not yet answered that could still tell the problems apart, the most worth asking first.
 * @param passed checks that the complaint itself has answered
 */
export function openChecks(guide: Guide, host: Host, belief: Belief, evidence: Evidence, passed: PassedOver = NONE): Offer[] {
  const answered = new Set<string>(evidence.findings.map(({ check }) => check))
  const checkAt = (place: number): Check | undefined => guide.checks[host.checks[place] ?? -1]
  const isOpen = (place: number): boolean => {
    const check = checkAt(place)
    return check !== undefined && !answered.has(check.id) && !passed.has(check.number)
  }
  return rankChecks(belief, isOpen, LEAST_GAIN_BITS).flatMap((ranked) => {
    const check = checkAt(ranked.place)
    return check === undefined ? [] : [{ ...ranked, check }]
  })
}

/** The offers that can be asked on the spot. */
export function askable(offers: readonly Offer[]): Offer[] {
  return offers.filter(({ check }) => !laterEfforts.includes(check.effort))
}
