/** First index of a rising list whose number is `from` or more; its length where none is. */
export function firstFrom(rising: Int32Array, from: number): number {
  let low = 0
  let high = rising.length
  while (low < high) {
    const middle = (low + high) >>> 1
    if ((rising[middle] ?? 0) < from) low = middle + 1
    else high = middle
  }
  return low
}
