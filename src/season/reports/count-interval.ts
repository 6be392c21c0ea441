import { gammaDensity, gammaP } from './gamma.js'

/** A mean count with the values between which it lies with the confidence asked for. */
export interface CountInterval {
  readonly low: number
  readonly high: number
}

/** The low limit of a count below this is less than 10^-160. */
const NEXT_TO_NOTHING = 0.01

/**
 * The exact interval for the mean of a Poisson count (Garwood 1936, Biometrika 28:437-442): low is the mean at which so many
 * or more would come with chance (1 − confidence) / 2, high the one at which so many or fewer would. It is honest for
 * small numbers: none seen still leaves room for 3.7. Counts by weight need not be whole; then it is the same formula
 * in between, by the gamma distribution.
 * @param count 0 or more
 * @param confidence between 0 and 1
 */
export function countInterval(count: number, confidence = 0.95): CountInterval {
  if (!(count >= 0)) throw new Error(`A count is 0 or more, not ${count}.`)
  if (!(confidence > 0 && confidence < 1)) throw new Error(`A confidence is between 0 and 1, not ${confidence}.`)
  const key = `${count} ${confidence}`
  const known = kept.get(key)
  if (known !== undefined) return known
  const tail = (1 - confidence) / 2
  const interval = {
    low: count < NEXT_TO_NOTHING ? 0 : meanWhere(count, tail),
    high: meanWhere(count + 1, 1 - tail),
  }
  if (Number.isInteger(count) && kept.size < MOST_KEPT) kept.set(key, interval)
  return interval
}

/** Small whole counts are asked for again and again; so many are remembered, no more. */
const kept = new Map<string, CountInterval>()
const MOST_KEPT = 2000

/** The mean at which P(a, mean) is this share: Newton's steps, halved where they would leave the bounds known so far. */
function meanWhere(a: number, share: number): number {
  let [below, above, mean] = [0, Infinity, a]
  for (let turn = 0; turn < 100; turn++) {
    const off = gammaP(a, mean) - share
    if (off < 0) below = mean
    else above = mean
    const step = off / gammaDensity(a, mean)
    const next = mean - step
    const held = next > below && next < above ? next : above === Infinity ? 2 * mean : (below + above) / 2
    if (Math.abs(held - mean) <= 1e-12 * mean) return held
    mean = held
  }
  return mean
}
