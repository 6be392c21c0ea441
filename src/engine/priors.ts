import type { Guide, Host } from '../guide/index.js'
import { BESIDE_ENTRY_FACTOR, NOT_LISTED_PRIOR, seasonFactors } from './bars.js'

/**
 * ln prior of each problem of a host, in the host's order, then of *something not listed here*; the priors sum to 1.
 * prior = how common among the host's complaints × season × whether the settled entry can reach it.
 * @param month 1 to 12
 * @param reached rows that the asker's entry leads to, or null when the case starts at the top of the tree
 */
export function logPriors(guide: Guide, host: Host, month: number, reached: ReadonlySet<number> | null = null): Float64Array {
  const priors = new Float64Array(host.problems.length + 1)
  let sum = 0
  host.problems.forEach((problem, row) => {
    const entry = reached === null || reached.size === 0 || reached.has(row) ? 1 : BESIDE_ENTRY_FACTOR
    const share = (host.commonness[row] ?? 0) * seasonFactor(guide.problems[problem]?.months ?? [], month) * entry
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
