/**
 * How many slips part two words: a letter added, left out, wrong, or two neighbours swapped each count one
 * (optimal string alignment). Gives `limit + 1` as soon as it is sure to be more than `limit`.
 */
export function slipsBetween(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1
  let before: number[] = []
  let above = Array.from({ length: b.length + 1 }, (_, column) => column)
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row]
    let least = row
    for (let column = 1; column <= b.length; column += 1) {
      const same = a[row - 1] === b[column - 1]
      let slips = Math.min(
        (above[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + (same ? 0 : 1),
      )
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        slips = Math.min(slips, (before[column - 2] ?? 0) + 1)
      }
      current.push(slips)
      least = Math.min(least, slips)
    }
    if (least > limit && Math.min(...above) > limit) return limit + 1
    before = above
    above = current
  }
  return Math.min(above[b.length] ?? limit + 1, limit + 1)
}
