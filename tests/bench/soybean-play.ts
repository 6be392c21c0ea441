import { type AskedTree, isListed, type Stand } from './asked-tree.js'

/** Most checks asked of a case. */
export const MOST_CHECKS = 12

/** Power on P(problem) when checks are weighed: faint problems get less say in what is asked. */
export const FOCUS = 1.5

/** A case this sure is concluded without a confirming check, so no play goes on beyond it. */
export const SURE_ENOUGH = 0.97

/** The stands of one case after 0, 1, 2 … checks, as far as the play went. */
export interface Play {
  readonly truth: number
  readonly stands: readonly Stand[]
}

/** When a case ends. */
export interface Ending {
  /** It is concluded when this is claimed. */
  readonly early: number
  /** Before that, once a case: the next check is asked when it tells at least this many bits between the first two problems. */
  readonly confirming: number
  /** Once no more checks may be asked, it is concluded when this is claimed. */
  readonly last: number
  /** Below `last` it is handed over as soon as no check is worth this many bits any more. */
  readonly leastWorth: number
}

/** How a play ends. */
export interface Outcome {
  readonly truth: number
  readonly shares: Float64Array
  readonly leading: number
  readonly claimed: number
  readonly checks: number
  readonly isResolved: boolean
}

/** Plays a case on until `until` is claimed or the checks are used up, so that any ending up to `until` can be tried on it afterwards. */
export function playSoybean(tree: AskedTree, cells: Int8Array, truth: number, until: number): Play {
  return { truth, stands: tree.follow(cells, until, MOST_CHECKS) }
}

/** The number of checks after which a play ends. */
export function endingAt({ stands }: Play, { early, confirming, last, leastWorth }: Ending): number {
  let isConfirmed = false
  for (let checks = 0; checks < stands.length - 1; checks++) {
    const stand = stands[checks]
    if (stand === undefined) break
    if (stand.claimed < last && stand.worth < leastWorth) return checks
    if (stand.claimed < early || !isListed(stand)) continue
    if (isConfirmed || stand.between < confirming) return checks
    isConfirmed = true
  }
  return stands.length - 1
}

/** Whether a case that ends so is concluded. One that leads with *something not listed here* never is. */
export function isConcluded(stand: Stand, { last }: Ending): boolean {
  return stand.claimed >= last && isListed(stand)
}

/** How a play ends. */
export function endOf(play: Play, ending: Ending): Outcome {
  const checks = endingAt(play, ending)
  const { shares, leading, claimed } = standAt(play, checks)
  return { truth: play.truth, shares, leading, claimed, checks, isResolved: isConcluded(standAt(play, checks), ending) }
}

/** @throws when the play did not come so far */
export function standAt({ stands }: Play, checks: number): Stand {
  const stand = stands[checks]
  if (stand === undefined) throw new Error(`The play has ${stands.length} stands, none after ${checks} checks.`)
  return stand
}
