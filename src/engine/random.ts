/** A source of randomness: each call gives the next number, from 0 up to but not 1. Handed in, never taken from the machine. */
export type Random = () => number

/**
 * A seeded generator for simulations, the same on every machine: mulberry32 (T. Ettinger's public-domain design, from
 * memory). Not for secrets.
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** Draws a place from shares that sum to about 1, starting at `from` and `length` long. */
export function drawPlace(shares: Float64Array, from: number, length: number, random: Random): number {
  let left = random()
  for (let place = 0; place < length - 1; place++) {
    left -= shares[from + place] ?? 0
    if (left < 0) return place
  }
  return length - 1
}
