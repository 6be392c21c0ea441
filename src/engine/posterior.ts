import type { Guide, Host } from '../guide/index.js'
import { NOT_LISTED_PRIOR, seasonFactors } from './bars.js'

/** One answered check, as numbers of the guide. */
export interface Sighting {
  /** Place of the check in the host's list of checks. */
  readonly check: number
  readonly answer: number
}

/**
 * ln prior of each problem of a host, in the host's order, then of *something not listed here*; the priors sum to 1.
 * prior = how common among the host's complaints × season.
 * @param month 1 to 12
 */
export function logPriors(guide: Guide, host: Host, month: number): Float64Array {
  const priors = new Float64Array(host.problems.length + 1)
  let sum = 0
  host.problems.forEach((problem, row) => {
    const share = (host.commonness[row] ?? 0) * seasonFactor(guide.problems[problem]?.months ?? [], month)
    priors[row] = share
    sum += share
  })
  const listed = sum === 0 ? 0 : (1 - NOT_LISTED_PRIOR) / sum
  for (let row = 0; row < host.problems.length; row++) priors[row] = Math.log((priors[row] ?? 0) * listed)
  priors[host.problems.length] = sum === 0 ? 0 : Math.log(NOT_LISTED_PRIOR)
  return priors
}

/** How plausible a problem is in a month: 1 in season or when it has none, less beside it, least out of it. */
export function seasonFactor(months: readonly number[], month: number): number {
  if (months.length === 0 || months.includes(month)) return seasonFactors.inSeason
  const beside = [month === 1 ? 12 : month - 1, month === 12 ? 1 : month + 1]
  return beside.some((other) => months.includes(other)) ? seasonFactors.besideSeason : seasonFactors.outOfSeason
}

/**
 * Bayes' rule in log space: ln prior + Σ ln P(answer | problem), normalised to probabilities that sum to 1.
 * The order of the sightings does not matter beyond rounding.
 */
export function posterior(host: Host, priors: Float64Array, sightings: readonly Sighting[]): Float64Array {
  const rows = priors.length
  const logs = Float64Array.from(priors)
  for (const { check, answer } of sightings) {
    const table = host.logLikelihood[check]
    if (table === undefined) continue
    const answers = table.length / rows
    for (let row = 0; row < rows; row++) logs[row] = (logs[row] ?? 0) + (table[row * answers + answer] ?? 0)
  }
  return normalise(logs)
}

/** Turns logs into probabilities that sum to 1, in place. */
export function normalise(logs: Float64Array): Float64Array {
  let most = -Infinity
  for (const log of logs) if (log > most) most = log
  let sum = 0
  for (let row = 0; row < logs.length; row++) {
    const share = Math.exp((logs[row] ?? 0) - most)
    logs[row] = share
    sum += share
  }
  for (let row = 0; row < logs.length; row++) logs[row] = (logs[row] ?? 0) / sum
  return logs
}
