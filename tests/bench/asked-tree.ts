import { type Belief, type Learnt, rankChecks } from '../../src/engine/index.js'

/** Where a case stands after some answers: the same for every case that answered alike so far. */
export interface Stand {
  readonly shares: Float64Array
  readonly leading: number
  /** P(the leading problem). */
  readonly claimed: number
  /** The check that the engine asks next, or -1 when none is left. */
  readonly check: number
  /** What that check is worth: expected gain in bits per trouble of the look. */
  readonly worth: number
  /** What that check tells between the first problem and the second alone, in bits. */
  readonly between: number
}

interface Node extends Stand {
  readonly next: Map<number, Node>
}

/** What the engine asks after which answers, reckoned once and remembered: cases that answer alike share the work. */
export class AskedTree {
  readonly #learnt: Learnt
  readonly #belief: Belief
  #root: Node | undefined

  constructor(learnt: Learnt, belief: Belief) {
    this.#learnt = learnt
    this.#belief = belief
  }

  /** The stands of a case after 0, 1, 2 … checks: until `until` is claimed or `most` checks are asked. *Not sure* counts as asked. */
  follow(cells: Int8Array, until: number, most: number): Stand[] {
    const answered: [check: number, answer: number][] = []
    let node = this.#root ??= this.#reckon(answered)
    const stands: Stand[] = [node]
    while (answered.length < most && node.check >= 0 && !(isListed(node) && node.claimed >= until)) {
      const { check, next } = node
      const answer = cells[check] ?? -1
      answered.push([check, answer])
      const kept = next.get(answer)
      const here = kept ?? this.#reckon(answered)
      if (kept === undefined) next.set(answer, here)
      node = here
      stands.push(node)
    }
    return stands
  }

  #reckon(answered: readonly (readonly [check: number, answer: number])[]): Node {
    const belief = this.#belief
    belief.start(this.#learnt.logPriors)
    const asked = new Set<number>()
    for (const [check, answer] of answered) {
      asked.add(check)
      if (answer >= 0) belief.see(check, answer)
    }
    const shares = Float64Array.from(belief.shares())
    const leading = leaderOf(shares)
    const [best] = rankChecks(belief, (place) => !asked.has(place), 0)
    const between = best === undefined ? 0 : belief.gainBetween(best.place, leading, leaderOf(shares, leading))
    return { shares, leading, claimed: shares[leading] ?? 0, check: best?.place ?? -1, worth: best?.worth ?? 0, between, next: new Map() }
  }
}

/** Whether the case leads with a problem of the guide, not with *something not listed here*. */
export function isListed({ leading, shares }: Stand): boolean {
  return leading < shares.length - 1
}

/** The problem with the greatest share, the first of equals; with `beside` the greatest of the others. */
export function leaderOf(shares: Float64Array, beside = -1): number {
  let leading = beside === 0 ? 1 : 0
  for (let problem = leading + 1; problem < shares.length; problem++) {
    if (problem !== beside && (shares[problem] ?? 0) > (shares[leading] ?? 0)) leading = problem
  }
  return leading
}
