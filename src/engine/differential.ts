import type { Guide, Host } from '../guide/index.js'
import type { Evidence } from './evidence.js'
import type { Sighting } from './posterior.js'
import type { Differential, Reason } from './reading.js'

/** The findings that can be weighed for this host: known checks with one of their own answers. *not sure* weighs nothing. */
export function sightingsOf(guide: Guide, host: Host, evidence: Evidence): Sighting[] {
  const sightings: Sighting[] = []
  for (const finding of evidence.findings) {
    const number = guide.checkNumbers.get(finding.check)
    if (number === undefined) continue
    const check = host.checks.indexOf(number)
    const answer = guide.checks[number]?.answers.findIndex(({ label }) => label === finding.answer) ?? -1
    if (check >= 0 && answer >= 0) sightings.push({ check, answer })
  }
  // A fixed order makes the sum of logs the same to the last bit, whatever order the answers came in.
  return sightings.sort((a, b) => a.check - b.check)
}

/** The ranked problems with their reasons, most likely first. */
export function differentialOf(
  guide: Guide, host: Host, priors: Float64Array, probabilities: Float64Array, sightings: readonly Sighting[],
): Differential {
  const rows = Array.from(probabilities, (probability, row) => ({ probability, row }))
  rows.sort((a, b) => b.probability - a.probability || a.row - b.row)
  return rows.map(({ probability, row }) => ({
    problem: guide.problems[host.problems[row] ?? -1]?.id ?? null,
    probability,
    reasons: reasonsFor(guide, host, priors, row, sightings),
  }))
}

/**
 * Why a problem stands where it does: each finding's weight of evidence, ln P(answer | problem) − ln P(answer | any other),
 * the others weighted by their priors; strongest first. (Weight of evidence: Good 1950, from memory.)
 */
function reasonsFor(guide: Guide, host: Host, priors: Float64Array, row: number, sightings: readonly Sighting[]): Reason[] {
  const rows = priors.length
  const problem = guide.problems[host.problems[row] ?? -1]
  const reasons = sightings.flatMap(({ check, answer }): Reason[] => {
    const table = host.logLikelihood[check]
    const number = host.checks[check]
    const asked = number === undefined ? undefined : guide.checks[number]
    const label = asked?.answers[answer]?.label
    if (table === undefined || asked === undefined || label === undefined) return []
    const answers = table.length / rows
    let others = 0
    let weight = 0
    for (let other = 0; other < rows; other++) {
      if (other === row) continue
      const prior = Math.exp(priors[other] ?? 0)
      others += prior * Math.exp(table[other * answers + answer] ?? 0)
      weight += prior
    }
    const own = table[row * answers + answer] ?? 0
    return [{
      check: asked.id, answer: label, weight: weight === 0 ? 0 : own - Math.log(others / weight),
      seen: problem?.signs.find((sign) => sign.check === number)?.words[answer] ?? null,
    }]
  })
  return reasons.sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
}
