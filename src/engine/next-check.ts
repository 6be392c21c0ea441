import type { CheckId, Guide, Host } from '../guide/index.js'
import { effortWeights, LEAST_GAIN_BITS } from './bars.js'
import type { Evidence } from './evidence.js'
import { expectedGainBits } from './information.js'

export interface Offer {
  readonly check: CheckId
  readonly gainBits: number
  /** Gain per effort, by which offers are ranked. */
  readonly worth: number
}

/**
 * The checks not yet answered that could still tell the problems apart, the most worth asking first:
 * expected information gain divided by the trouble of the look.
 */
export function openChecks(guide: Guide, host: Host, probabilities: Float64Array, evidence: Evidence): Offer[] {
  const answered = new Set<string>(evidence.findings.map(({ check }) => check))
  const offers: Offer[] = []
  host.checks.forEach((number, index) => {
    const check = guide.checks[number]
    const table = host.logLikelihood[index]
    if (check === undefined || table === undefined || answered.has(check.id)) return
    const gainBits = expectedGainBits(probabilities, table)
    if (gainBits < LEAST_GAIN_BITS) return
    offers.push({ check: check.id, gainBits, worth: gainBits / effortWeights[check.effort] })
  })
  return offers.sort((a, b) => b.worth - a.worth || (a.check < b.check ? -1 : 1))
}
