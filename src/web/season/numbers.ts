/** A count by weight in few digits: 3, 2.4, 0.35. */
export function inShort(value: number): number {
  return value >= 10 ? Math.round(value) : Number(value.toPrecision(2))
}
