import type { CheckId, Guide, Host, Problem } from '../guide/index.js'
import {
  earlyBar, EXPLAINING_SHARE, LEAST_LEAD_FOR_SECOND_LOOK, LIKELY_SHARE, MOST_SECOND_LOOKS, RARE_SHARE, USUAL_SHARE,
} from './bars.js'
import type { Belief } from './belief.js'
import type { Evidence } from './evidence.js'
import type { SecondLook } from './reading.js'
import type { Sighting } from './sightings.js'

/**
 * The check to look at once more, or null. A finding is looked at again when, without it, one problem leads clearly, that
 * problem calls the answer rare, most plants with it show another answer, and nothing that is still likely would explain
 * the answer better. No doubt is worth a question where the answer, rare as it is, is rarer still with everything else
 * (then it speaks for the problem), or where the problem passes even the higher bar all the same. What part of the plant the trouble
 * is on is not doubted: it is a worry, not a look. Each check is looked at again at most once; then the answer is trusted.
 * What the asker said in the question, and notes and photos, are not doubted.
 * @param belief is left in another state
 */
export function secondLook(
  guide: Guide, host: Host, belief: Belief, logPriors: Float64Array, sightings: readonly Sighting[], evidence: Evidence,
): { readonly check: CheckId; readonly again: SecondLook } | null {
  if (evidence.findings.filter(({ again }) => again === true).length >= MOST_SECOND_LOOKS) return null
  const { checks } = belief.model
  const shares = Float64Array.from(belief.restate(logPriors, sightings).shares())
  const likely = Array.from(shares).flatMap((share, row) => {
    const problem = guide.problems[host.problems[row] ?? -1]
    return problem !== undefined && share >= LIKELY_SHARE ? [problem] : []
  })
  const firstCheck = host.nodes[host.start]?.check
  let best: { check: CheckId; again: SecondLook; lead: number } | null = null
  for (const doubted of sightings) {
    const check = guide.checks[host.checks[doubted.check] ?? -1]
    const finding = evidence.findings.find((one) => one.check === check?.id)
    if (check === undefined || finding?.from !== 'asked' || finding.again === true || check.number === firstCheck) continue
    if (likely.some((problem) => shareOf(problem, check.number, doubted.answer) >= EXPLAINING_SHARE)) continue
    const [row, lead] = leader(belief.restate(logPriors, sightings.filter((other) => other !== doubted)).shares())
    const problem = guide.problems[host.problems[row] ?? -1]
    const model = checks[doubted.check]
    if (problem === undefined || model === undefined || lead < LEAST_LEAD_FOR_SECOND_LOOK || sightings.length < 2) continue
    const withIt = shares[row] ?? 0
    if (withIt >= lead || withIt >= earlyBar(problem.cost)) continue
    // Only what the profile itself says counts as rare or usual; a check it does not mention raises no doubt.
    const sign = problem.signs.find((one) => one.check === check.number)
    if (sign === undefined || (sign.shares[doubted.answer] ?? 1) > RARE_SHARE) continue
    const [usual, share] = leader(sign.shares)
    const label = check.answers[usual]?.label
    if (label === undefined || share < USUAL_SHARE || (best !== null && best.lead >= lead)) continue
    best = { check: check.id, again: { said: finding.answer, problem: problem.id, usual: label }, lead }
  }
  return best === null ? null : { check: best.check, again: best.again }
}

/** P(answer | problem) as its profile says, 0 where it does not mention the check. */
function shareOf({ signs }: Problem, check: number, answer: number): number {
  return signs.find((sign) => sign.check === check)?.shares[answer] ?? 0
}

/** Place and size of the largest share. */
export function leader(shares: Float64Array): [number, number] {
  let row = 0
  for (let other = 1; other < shares.length; other++) if ((shares[other] ?? 0) > (shares[row] ?? 0)) row = other
  return [row, shares[row] ?? 0]
}
