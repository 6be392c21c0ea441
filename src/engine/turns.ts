import type { Guide, Host } from '../guide/index.js'
import type { Belief } from './belief.js'
import { askable, type Offer } from './open-checks.js'
import type { Turn } from './reading.js'
import { leader } from './second-look.js'
import type { Sighting } from './sightings.js'

const MOST_TURNS = 3

/** An answer less likely than one in ten, given all that is known, is beside the point. Our judgement. */
const LEAST_CHANCE = 0.1

/**
 * Answers not yet given that could well turn up and would make another problem lead, likeliest first; often none. Samples
 * for a laboratory are no look, and what was answered, or said by the complaint itself, is not open.
 * @param belief is left in another state
 */
export function turnsOf(
  guide: Guide, host: Host, belief: Belief, logPriors: Float64Array, sightings: readonly Sighting[], open: readonly Offer[],
): Turn[] {
  const now = Float64Array.from(belief.restate(logPriors, sightings).shares())
  const [row] = leader(now)
  const turns: (Turn & { chance: number })[] = []
  for (const { check, place } of askable(open)) {
    const model = belief.model.checks[place]
    if (model === undefined) continue
    for (let answer = 0; answer < model.answers; answer++) {
      let chance = 0
      now.forEach((share, problem) => { chance += share * (model.share[problem * model.answers + answer] ?? 0) })
      if (chance < LEAST_CHANCE) continue
      belief.restate(logPriors, sightings).see(place, answer)
      const [next] = leader(belief.shares())
      const label = check.answers[answer]?.label
      if (next === row || label === undefined) continue
      turns.push({ check: check.id, answer: label, to: guide.problems[host.problems[next] ?? -1]?.id ?? null, chance })
    }
  }
  turns.sort((a, b) => b.chance - a.chance)
  return turns.slice(0, MOST_TURNS).map(({ check, answer, to }) => ({ check, answer, to }))
}
