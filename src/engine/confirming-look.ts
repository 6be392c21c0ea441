import type { Check, Guide, Problem } from '../guide/index.js'
import { bars, KEPT_SHARE, LEAST_CHANCE_TO_UNSEAT, LEAST_CONFIRMING_BITS, NEEDS_NO_CONFIRMING } from './bars.js'
import { askedBeyondTree, isEasy } from './beyond-tree.js'
import type { CaseState } from './case-state.js'
import { isGraveLikely } from './grave.js'
import { chanceOfAnswer } from './model.js'
import type { Offer } from './open-checks.js'

/**
 * The easy look to ask for before a problem is concluded, or null when it should be concluded now. Most trees end after two
 * or three answers, and one of those may be misread or untypical: a look that the problem's profile knows, that tells much
 * and could well unseat it is asked first, once. None is asked of what is nearly certain, nor where a look beyond the
 * tree's own has been asked already, nor in a tree that stands for any plant; nor what a tree begins with, such as the part
 * of the plant that is ill: that sorts complaints, and sounds as if nobody had listened when it comes last.
 * @param state its belief is left in another state
 * @param row the leading problem's row
 */
export function confirmingLook(state: CaseState, leading: Problem, row: number): Check | null {
  const { guide, walk, belief, priors, sightings, shares, open } = state
  if (walk.host.isOfAnyPlant || (shares[row] ?? 0) >= NEEDS_NO_CONFIRMING || askedBeyondTree(state).length > 0) return null
  const canUnseat = ({ place }: Offer): boolean => {
    const check = belief.model.checks[place]
    if (check === undefined) return false
    for (let answer = 0; answer < check.answers; answer++) {
      if (chanceOfAnswer(check, answer, shares) < LEAST_CHANCE_TO_UNSEAT) continue
      belief.restate(priors, sightings).see(place, answer)
      if ((belief.shares()[row] ?? 0) < bars[leading.cost]) return true
    }
    return false
  }
  const isOfTheProblem = ({ check }: Offer): boolean => leading.signs.some((sign) => sign.check === check.number)
  const sorts = sortingChecks(guide)
  return open.find((offer) => isOfTheProblem(offer) && !sorts.has(offer.check.number) && isEasy(offer.check) && offer.gainBits >= LEAST_CONFIRMING_BITS && canUnseat(offer))?.check ?? null
}

/**
 * Whether a problem that the tree ended in, and that passed its bar on the tree's own answers, still holds after the looks
 * beyond the tree: it leads and is still likely. One untypical look then does not send the asker on, since hardly any plant
 * shows everything. Only where being wrong costs little and nothing grave is likely.
 * @param state its belief is left in another state
 * @param row the leading problem's row
 */
export function holdsAfterLooks(state: CaseState, leading: Problem, row: number): boolean {
  const { guide, walk, belief, priors, sightings, shares } = state
  if (walk.stand.kind !== 'problem' || leading.cost !== 'ordinary' || (shares[row] ?? 0) < KEPT_SHARE || isGraveLikely(guide, walk.host, shares)) return false
  const beyond = new Set(askedBeyondTree(state).map(({ check }) => guide.checkNumbers.get(check)))
  const ofTheTree = sightings.filter(({ check }) => !beyond.has(walk.host.checks[check]))
  if (ofTheTree.length === 0 || ofTheTree.length === sightings.length) return false
  return (belief.restate(priors, ofTheTree).shares()[row] ?? 0) >= bars[leading.cost]
}

const sorting = new WeakMap<Guide, ReadonlySet<number>>()

/** Numbers of the checks that some tree begins with. */
function sortingChecks(guide: Guide): ReadonlySet<number> {
  const before = sorting.get(guide)
  if (before !== undefined) return before
  const made = new Set(guide.hosts.flatMap(({ nodes, start }) => nodes[start]?.check ?? []))
  sorting.set(guide, made)
  return made
}
