/** Relative error at which sums stop. */
const CLOSE = 1e-14
const MOST_TERMS = 10_000

/**
 * The regularised lower incomplete gamma function P(a, x): the chance that a Poisson count of mean x is at least a, for
 * whole a. By its series below a + 1, by its continued fraction above (NIST Digital Library of Mathematical Functions,
 * 8.11.4 and 8.9.2; Lentz's way of summing the fraction).
 * @param a above 0
 * @param x 0 or more
 */
export function gammaP(a: number, x: number): number {
  if (!(a > 0) || !(x >= 0)) throw new Error(`gammaP needs a > 0 and x >= 0, not a = ${a} and x = ${x}.`)
  if (x === 0) return 0
  const front = Math.exp(a * Math.log(x) - x - logGamma(a))
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x)
}

/** How fast P(a, x) rises with x: the density of the gamma distribution of shape a, for x above 0. */
export function gammaDensity(a: number, x: number): number {
  return Math.exp((a - 1) * Math.log(x) - x - logGamma(a))
}

function series(a: number, x: number): number {
  let term = 1 / a
  let sum = term
  for (let n = 1; n < MOST_TERMS; n++) {
    term *= x / (a + n)
    sum += term
    if (term < sum * CLOSE) return sum
  }
  throw new Error(`The series of P(${a}, ${x}) does not come to an end.`)
}

function fraction(a: number, x: number): number {
  const tiny = 1e-300
  let b = x + 1 - a
  let c = 1 / tiny
  let d = 1 / b
  let value = d
  for (let n = 1; n < MOST_TERMS; n++) {
    const step = -n * (n - a)
    b += 2
    d = step * d + b
    if (Math.abs(d) < tiny) d = tiny
    c = b + step / c
    if (Math.abs(c) < tiny) c = tiny
    d = 1 / d
    value *= d * c
    if (Math.abs(d * c - 1) < CLOSE) return value
  }
  throw new Error(`The fraction of P(${a}, ${x}) does not come to an end.`)
}

/** ln Γ(a) for a above 0: Stirling's series (DLMF 5.11.1), after stepping up to where it is exact to the last figures. */
function logGamma(a: number): number {
  let [at, shift] = [a, 0]
  for (; at < 12; at++) shift += Math.log(at)
  const square = 1 / (at * at)
  const correction = (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) / at
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + correction - shift
}
