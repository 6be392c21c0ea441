/** A table row that may be shown to anyone: what is hidden in it cannot be worked out from what is shown. */
export interface PublicCounts<Place extends string = string> {
  /** Of all places together; null when it is too small to be shown. */
  readonly total: number | null
  /** Places whose own count may be shown, the greatest first. */
  readonly places: readonly { readonly place: Place, readonly count: number }[]
  /** True when some place has reports that are not shown by themselves. */
  readonly isPartHidden: boolean
}

/**
 * Hides small counts by place, and as many greater ones beside them as it takes so that nobody gets a small one back by
 * taking the shown ones from the total: primary and complementary cell suppression with a threshold rule (Willenborg & de
 * Waal 2001, Elements of Statistical Disclosure Control, Springer, chapters 2 and 6; from memory).
 *
 * What a reader can always work out is the sum over the hidden places. So that sum is at least `least` and covers two
 * places or more that have reports, or else nothing is hidden at all. Where that cannot be had, the total is left out.
 * Whether a place without reports is among the hidden ones is never told.
 * @param counts cases by place, whole numbers of 0 and more
 * @param least the smallest count that may be shown, 1 or more
 */
export function publicCounts<Place extends string>(counts: ReadonlyMap<Place, number>, least: number): PublicCounts<Place> {
  const reported = [...counts].map(([place, count]) => ({ place, count })).filter(({ count }) => count > 0)
  const greatestFirst = reported.toSorted((a, b) => b.count - a.count || (a.place < b.place ? -1 : 1))
  const total = sumOf(greatestFirst)
  let shown = greatestFirst.filter(({ count }) => count >= least)
  let hidden = greatestFirst.filter(({ count }) => count < least)
  // The smallest of the shown goes too while the hidden ones could be told: one alone, or together still a small count.
  while (hidden.length > 0 && shown.length > 0 && (hidden.length < 2 || sumOf(hidden) < least)) {
    hidden = [...shown.slice(-1), ...hidden]
    shown = shown.slice(0, -1)
  }
  const isTotalSafe = total >= least && (hidden.length === 0 || (hidden.length >= 2 && sumOf(hidden) >= least) || shown.length === 0)
  return { total: isTotalSafe ? total : null, places: shown, isPartHidden: hidden.length > 0 }
}

function sumOf(cells: readonly { readonly count: number }[]): number {
  return cells.reduce((sum, { count }) => sum + count, 0)
}
