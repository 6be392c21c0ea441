/** One forecast and what came of it. */
export interface Forecast {
  /** Probability claimed for the first choice, 0 to 1. */
  readonly claimed: number
  readonly isRight: boolean
}

export interface ReliabilityBin {
  readonly from: number
  readonly to: number
  readonly count: number
  /** Mean probability claimed in the bin. */
  readonly claimed: number
  /** Share that was right. */
  readonly right: number
}

/** Reliability of first choices in bins of claimed probability; empty bins are left out. */
export function reliabilityBins(forecasts: readonly Forecast[], edges: readonly number[] = [0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 0.95, 1]): ReliabilityBin[] {
  return edges.slice(0, -1).flatMap((from, place) => {
    const to = edges[place + 1] ?? 1
    const inside = forecasts.filter(({ claimed }) => claimed >= from && (claimed < to || to === 1))
    if (inside.length === 0) return []
    return [{
      from, to, count: inside.length,
      claimed: mean(inside.map(({ claimed }) => claimed)), right: mean(inside.map(({ isRight }) => (isRight ? 1 : 0))),
    }]
  })
}

/** Expected calibration error: the mean gap between claimed and right over the bins, weighted by their size. */
export function calibrationError(bins: readonly ReliabilityBin[]): number {
  const total = bins.reduce((sum, { count }) => sum + count, 0)
  return total === 0 ? 0 : bins.reduce((sum, { count, claimed, right }) => sum + count / total * Math.abs(claimed - right), 0)
}

/** Brier score of one case over all problems: Σ (P(problem) − [it is the true one])², 0 at best, 2 at worst (Brier 1950). */
export function brierScore(shares: ArrayLike<number>, truth: number): number {
  let score = 0
  for (let problem = 0; problem < shares.length; problem++) score += ((shares[problem] ?? 0) - (problem === truth ? 1 : 0)) ** 2
  return score
}

/** Log loss of one case, in nats: −ln P(the true problem), at most that of a one-in-a-million claim. */
export function logLoss(shares: ArrayLike<number>, truth: number): number {
  return -Math.log(Math.max(1e-6, shares[truth] ?? 0))
}

export function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
}
