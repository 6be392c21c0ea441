import type { Guide, Host } from '../guide/index.js'
import type { Belief } from './belief.js'
import type { Differential, Reason } from './reading.js'
import type { Sighting } from './sightings.js'

/**
 * The ranked problems with their reasons, most likely first.
 * @param belief is left in another state
 */
export function differentialOf(
  guide: Guide, host: Host, belief: Belief, logPriors: Float64Array, shares: Float64Array, sightings: readonly Sighting[],
): Differential {
  const rows = Array.from(shares, (probability, row) => ({ probability, row }))
  rows.sort((a, b) => b.probability - a.probability || a.row - b.row)
  const withoutEach = sightings.map((left) => Float64Array.from(belief.restate(logPriors, sightings.filter((other) => other !== left)).shares()))
  return rows.map(({ probability, row }) => ({
    problem: guide.problems[host.problems[row] ?? -1]?.id ?? null,
    probability,
    reasons: reasonsFor(guide, host, row, shares, sightings, withoutEach),
  }))
}

/**
 * Why a problem stands where it does: what each finding adds to what the others say, as weight of evidence, the change
 * of its log odds (Good 1950, from memory); strongest first. So a finding counts for a problem only where it raises it
 * against those that are still likely, however well it fits by itself.
 */
function reasonsFor(
  guide: Guide, host: Host, row: number, shares: Float64Array, sightings: readonly Sighting[], withoutEach: readonly Float64Array[],
): Reason[] {
  const problem = guide.problems[host.problems[row] ?? -1]
  const reasons = sightings.flatMap(({ check, answer }, place): Reason[] => {
    const number = host.checks[check]
    const asked = number === undefined ? undefined : guide.checks[number]
    const label = asked?.answers[answer]?.label
    if (asked === undefined || label === undefined) return []
    return [{
      check: asked.id, answer: label, weight: logOdds(shares, row) - logOdds(withoutEach[place] ?? shares, row),
      seen: problem?.signs.find((sign) => sign.check === number)?.words[answer] ?? null,
    }]
  })
  return reasons.sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
}

/** ln of a row's share against all the others', which are summed apart so that near certainty keeps its figures. */
function logOdds(shares: Float64Array, row: number): number {
  let others = 0
  shares.forEach((share, other) => { if (other !== row) others += share })
  return Math.log(Math.max(shares[row] ?? 0, Number.MIN_VALUE)) - Math.log(Math.max(others, Number.MIN_VALUE))
}
