import { type Belief, type Learnt, rankChecks } from '../../src/engine/index.js'

/** Most checks asked of a case. */
export const MOST_CHECKS = 12

/** Power on P(problem) when checks are weighed: faint problems get less say in what is asked. */
export const FOCUS = 1.5

/** The posterior of one case after 0, 1, 2 … checks, as far as the play went. */
export interface Play {
  readonly truth: number
  readonly steps: readonly { readonly leading: number; readonly claimed: number; readonly shares: Float64Array }[]
}

/** The bars at which a case is concluded: at once, or once no more checks may be asked. */
export interface Bars {
  readonly early: number
  readonly last: number
}

/** How a play ends under some bars. */
export interface Outcome {
  readonly truth: number
  readonly shares: Float64Array
  readonly leading: number
  readonly claimed: number
  readonly checks: number
  readonly isResolved: boolean
}

/**
 * Plays a case: the engine asks, the case answers; *not sure* counts as asked. It goes on until `until` is reached or the
 * checks are used up, so that any bars up to `until` can be tried on it afterwards.
 */
export function playSoybean({ model, logPriors }: Learnt, belief: Belief, cells: Int8Array, truth: number, until: number): Play {
  belief.start(logPriors)
  const asked = new Uint8Array(model.checks.length)
  const steps: Play['steps'][number][] = []
  for (let count = 0; ; count++) {
    const shares = Float64Array.from(belief.shares())
    const leading = leaderOf(shares)
    const claimed = shares[leading] ?? 0
    steps.push({ leading, claimed, shares })
    if (count >= MOST_CHECKS || (leading < shares.length - 1 && claimed >= until)) break
    const [best] = rankChecks(belief, (place) => asked[place] === 0, 0)
    if (best === undefined) break
    asked[best.place] = 1
    const answer = cells[best.place] ?? -1
    if (answer >= 0) belief.see(best.place, answer)
  }
  return { truth, steps }
}

/** Where a play ends under some bars. A case that leads with *something not listed here* is never concluded. */
export function endOf({ truth, steps }: Play, { early, last }: Bars): Outcome {
  const isListed = (step: Play['steps'][number]): boolean => step.leading < step.shares.length - 1
  const at = steps.findIndex((step) => isListed(step) && step.claimed >= early)
  const place = at < 0 ? steps.length - 1 : at
  const step = steps[place]
  if (step === undefined) throw new Error('A play has at least one step.')
  return { truth, shares: step.shares, leading: step.leading, claimed: step.claimed, checks: place, isResolved: isListed(step) && step.claimed >= (at < 0 ? last : early) }
}

/** Highest bar that is tried. */
export const HIGHEST_BAR = 0.92

/** Share of resolved cases that is given up for fewer checks. */
const WORTH_OF_CHECKS = 0.005

/**
 * Of the bars under which at least `aim` of the resolved training plays are right: those with the fewest checks that
 * still resolve within half a point of the most.
 */
export function chooseBars(plays: readonly Play[], aim: number): Bars {
  const tried: { bars: Bars; resolved: number; checks: number }[] = []
  for (let early = 80; early <= 100 * HIGHEST_BAR; early += 1) {
    for (let last = 60; last <= early; last += 2) {
      const bars = { early: early / 100, last: last / 100 }
      const ends = plays.map((play) => endOf(play, bars))
      const resolved = ends.filter(({ isResolved }) => isResolved)
      const right = resolved.filter(({ leading, truth }) => leading === truth).length
      if (right < aim * resolved.length) continue
      const checks = ends.reduce((sum, end) => sum + end.checks, 0)
      tried.push({ bars, resolved: resolved.length, checks })
    }
  }
  const most = Math.max(0, ...tried.map(({ resolved }) => resolved))
  const [best] = tried.filter(({ resolved }) => resolved >= most - WORTH_OF_CHECKS * plays.length).sort((a, b) => a.checks - b.checks || b.resolved - a.resolved)
  return best?.bars ?? { early: HIGHEST_BAR, last: HIGHEST_BAR }
}

export function leaderOf(shares: Float64Array): number {
  let leading = 0
  for (let problem = 1; problem < shares.length; problem++) if ((shares[problem] ?? 0) > (shares[leading] ?? 0)) leading = problem
  return leading
}
