/** How far a watch problem has come in a district, as a specialist says. */
export const presenceStates = ['not found', 'found nearby', 'present', 'widespread'] as const
export type PresenceState = (typeof presenceStates)[number]

/** One word of a specialist on a watch problem in a district. None is ever altered; a later one stands over it. */
export interface PresenceChange {
  readonly problem: string
  readonly district: string
  readonly state: PresenceState
  /** ISO date from which on it holds. */
  readonly on: string
  readonly by: string
  readonly why: string
}

/** How a watch problem stands in a district. */
export interface Presence {
  readonly state: PresenceState
  readonly on: string
  /** The neighbouring district where it was found, when that is why it counts as found nearby; else null. */
  readonly beside: string | null
}

/**
 * How a watch problem stands in a district on a day: the last word on it, of one day the one said last. Where it is not
 * found, or nobody has said anything, and it has since been said to be present in a district beside, it counts as found
 * nearby: whoever said 'not found' did not know of that yet.
 * @param changes of this one problem, in the order in which they were said
 * @param beside names of the neighbouring districts
 * @param day ISO date; what holds from a later day on does not count yet
 * @returns null when nothing was said that bears on it
 */
export function presenceOn(changes: readonly PresenceChange[], district: string, beside: readonly string[], day: string): Presence | null {
  const own = lastWord(changes, district, day)
  if (own !== null && own.state !== 'not found') return { state: own.state, on: own.on, beside: null }
  const near = beside.flatMap((other) => {
    const word = lastWord(changes, other, day)
    const isFound = word !== null && (word.state === 'present' || word.state === 'widespread')
    return isFound && (own === null || word.on > own.on) ? [word] : []
  }).sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.district < b.district ? -1 : 1))[0]
  if (near !== undefined) return { state: 'found nearby', on: near.on, beside: near.district }
  return own === null ? null : { state: own.state, on: own.on, beside: null }
}

function lastWord(changes: readonly PresenceChange[], district: string, day: string): PresenceChange | null {
  let last: PresenceChange | null = null
  for (const change of changes) {
    if (change.district === district && change.on <= day && (last === null || change.on >= last.on)) last = change
  }
  return last
}
