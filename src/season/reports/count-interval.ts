import { gammaP } from './gamma.js'

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
  const tail = (1 - confidence) / 2
  return {
    low: count < NEXT_TO_NOTHING ? 0 : meanWhere((mean) => gammaP(count, mean) - tail, count),
    high: meanWhere((mean) => gammaP(count + 1, mean) - (1 - tail), count + 1),
  }
}

/** Where a function of the mean that rises through 0 does so, by halving. */
function meanWhere(rising: (mean: number) => number, near: number): number {
  let [below, above] = [0, near + 1]
  while (rising(above) < 0) above *= 2
  for (let turn = 0; turn < 200 && above - below > 1e-12 * above; turn++) {
    const middle = (below + above) / 2
    if (rising(middle) < 0) below = middle
    else above = middle
  }
  return (below + above) / 2
}
