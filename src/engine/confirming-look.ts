import { CANT_LOOK, type Check, type Effort, NOT_SURE, type Problem } from '../guide/index.js'
import { LEAST_CHANCE_TO_UNSEAT, LEAST_CONFIRMING_BITS, MOST_CONFIRMING_LOOKS, NEEDS_NO_CONFIRMING } from './bars.js'
import type { Belief } from './belief.js'
import type { Evidence } from './evidence.js'
import type { Offer } from './open-checks.js'
import type { Sighting } from './sightings.js'
import type { TreeWalk } from './tree-walk.js'

/** Looks that cost a moment: nobody digs or waits to be told again what is likely already. */
const EASY: readonly Effort[] = ['glance', 'hand lens']

/** What is known of a case that is about to be concluded. */
interface ToConclude {
  readonly evidence: Evidence
  readonly walk: TreeWalk
  /** Left in another state. */
  readonly belief: Belief
  readonly priors: Float64Array
  readonly sightings: readonly Sighting[]
  readonly shares: Float64Array
  readonly open: readonly Offer[]
}

/**
 * The easy look to ask for before a problem is concluded, or null when it should be concluded now. Most trees end after two
 * or three answers, and one of those may be misread or untypical: a look that tells much and could well unseat the problem
 * is asked first, at most MOST_CONFIRMING_LOOKS beyond the tree's own. None is asked of what is nearly certain, nor after
 * one that the asker could not see.
 * @param row the leading problem's row
 * @param bar what it has to hold to be concluded, 0 to 1
 */
export function confirmingLook({ evidence, walk: { path }, belief, priors, sightings, shares, open }: ToConclude, leading: Problem, row: number, bar: number): Check | null {
  if ((shares[row] ?? 0) >= NEEDS_NO_CONFIRMING) return null
  const onThePath = new Set<string>(path.map(({ finding }) => finding.check))
  const beyond = evidence.findings.filter(({ check, from }) => from === 'asked' && !onThePath.has(check))
  if (beyond.length >= MOST_CONFIRMING_LOOKS || beyond.some(({ answer }) => answer === NOT_SURE || answer === CANT_LOOK)) return null
  const canUnseat = ({ place }: Offer): boolean => {
    const check = belief.model.checks[place]
    if (check === undefined) return false
    for (let answer = 0; answer < check.answers; answer++) {
      let chance = 0
      shares.forEach((share, problem) => { chance += share * (check.share[problem * check.answers + answer] ?? 0) })
      if (chance < LEAST_CHANCE_TO_UNSEAT) continue
      belief.restate(priors, sightings).see(place, answer)
      if ((belief.shares()[row] ?? 0) < bar) return true
    }
    return false
  }
  const isOfTheProblem = ({ check }: Offer): boolean => leading.signs.some((sign) => sign.check === check.number)
  return open.find((offer) => isOfTheProblem(offer) && EASY.includes(offer.check.effort) && offer.gainBits >= LEAST_CONFIRMING_BITS && canUnseat(offer))?.check ?? null
}
