import type { Check, Guide, Host, Problem } from '../guide/index.js'
import { bars } from './bars.js'
import { Belief } from './belief.js'
import { modelOfHost } from './model.js'
import { askable, openChecks } from './open-checks.js'
import { logPriors } from './priors.js'
import { leader } from './second-look.js'
import type { Sighting } from './sightings.js'

/** Where an answer of a drawn tree leads. */
export type Drawn =
  | { readonly kind: 'node'; readonly check: Check; readonly answers: readonly Drawn[] }
  | { readonly kind: 'problem'; readonly problem: Problem }
  | { readonly kind: 'hand over' }

export interface DrawnTree {
  readonly root: Drawn
  /** Mean checks asked, over plants as the profiles describe them. */
  readonly expectedChecks: number
  /** Share of plants whose branch ends in a problem. */
  readonly settled: number
}

/** An answer less likely than this on its path is not followed further. */
const LEAST_CHANCE = 0.002

/**
 * The tree that the profiles alone would draw for a host: at each node the check with the most expected gain per effort,
 * until a problem passes its bar.
 * @param deepest most checks on a path
 */
export function drawTree(guide: Guide, host: Host, deepest = 6): DrawnTree {
  const belief = new Belief(modelOfHost(guide, host))
  // June stands for the growing season; a tree is drawn for the year, so season moves it only a little.
  const priors = logPriors(guide, host, 6)
  let expectedChecks = 0
  let settled = 0

  const grow = (path: readonly Sighting[], chance: number): Drawn => {
    belief.start(priors)
    for (const { check, answer } of path) belief.see(check, answer)
    const shares = Float64Array.from(belief.shares())
    const [row, share] = leader(shares)
    const problem = guide.problems[host.problems[row] ?? -1]
    if (problem !== undefined && share >= bars[problem.cost]) {
      settled += chance
      return { kind: 'problem', problem }
    }
    const findings = path.flatMap(({ check, answer }) => {
      const one = guide.checks[host.checks[check] ?? -1]
      const label = one?.answers[answer]?.label
      return one === undefined || label === undefined ? [] : [{ check: one.id, answer: label, from: 'asked' as const }]
    })
    const [best] = askable(openChecks(guide, host, belief, { redFlags: [], carriedOn: true, start: null, findings }))
    const model = best === undefined ? undefined : belief.model.checks[best.place]
    if (best === undefined || model === undefined || path.length >= deepest || chance < LEAST_CHANCE) return { kind: 'hand over' }
    expectedChecks += chance
    const answers = Array.from({ length: model.answers }, (_, answer): Drawn => {
      let likely = 0
      shares.forEach((part, problemRow) => { likely += part * (model.share[problemRow * model.answers + answer] ?? 0) })
      return grow([...path, { check: best.place, answer }], chance * likely)
    })
    return { kind: 'node', check: best.check, answers }
  }

  const root = grow([], 1)
  return { root, expectedChecks, settled }
}
