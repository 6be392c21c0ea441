import type { Guide, Host } from '../guide/index.js'
import type { Model } from './model.js'
import type { Differential, Reason } from './reading.js'
import type { Sighting } from './sightings.js'

/** The ranked problems with their reasons, most likely first. */
export function differentialOf(
  guide: Guide, host: Host, model: Model, logPriors: Float64Array, shares: Float64Array, sightings: readonly Sighting[],
): Differential {
  const rows = Array.from(shares, (probability, row) => ({ probability, row }))
  rows.sort((a, b) => b.probability - a.probability || a.row - b.row)
  return rows.map(({ probability, row }) => ({
    problem: guide.problems[host.problems[row] ?? -1]?.id ?? null,
    probability,
    reasons: reasonsFor(guide, host, model, logPriors, row, sightings),
  }))
}

/**
 * Why a problem stands where it does: each finding's weight of evidence, ln P(answer | problem) − ln P(answer | any other),
 * the others weighted by their priors; strongest first. (Weight of evidence: Good 1950, from memory.)
 */
function reasonsFor(
  guide: Guide, host: Host, model: Model, logPriors: Float64Array, row: number, sightings: readonly Sighting[],
): Reason[] {
  const problem = guide.problems[host.problems[row] ?? -1]
  const reasons = sightings.flatMap(({ check, answer }): Reason[] => {
    const table = model.checks[check]
    const number = host.checks[check]
    const asked = number === undefined ? undefined : guide.checks[number]
    const label = asked?.answers[answer]?.label
    if (table === undefined || asked === undefined || label === undefined) return []
    let others = 0
    let weight = 0
    for (let other = 0; other < model.rows; other++) {
      if (other === row) continue
      const prior = Math.exp(logPriors[other] ?? 0)
      others += prior * (table.share[other * table.answers + answer] ?? 0)
      weight += prior
    }
    const own = table.log[row * table.answers + answer] ?? 0
    return [{
      check: asked.id, answer: label, weight: weight === 0 ? 0 : own - Math.log(others / weight),
      seen: problem?.signs.find((sign) => sign.check === number)?.words[answer] ?? null,
    }]
  })
  return reasons.sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
}
