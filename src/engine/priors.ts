import type { Guide, Host, Problem } from '../guide/index.js'
import { LEAST_FACTOR, LEAST_FACTOR_OF_WATCH, MOST_FACTOR } from '../season/index.js'
import { BESIDE_ENTRY_FACTOR, NOT_LISTED_PRIOR, NOT_LISTED_PRIOR_OF_ANY_PLANT, seasonFactors } from './bars.js'

/**
 * ln prior of each problem of a host, in the host's order, then of *something not listed here*; the priors sum to 1.
 * prior = how common among the host's complaints × season × what is reported, present and favoured here and now × whether
 * the settled entry can reach it × how well it fits what the complaint itself has said. *Something not listed here* keeps
 * its share whatever the season says: that is about the problems that are listed.
 * @param month 1 to 12
 * @param reached rows that the asker's entry leads to, or null when the case starts at the top of the tree
 * @param complaint weight of each row by the complaint, the last that of *something not listed here*; null likewise
 * @param plausible what the season multiplies problems by, by name; held within its caps
 */
export function logPriors(
  guide: Guide, host: Host, month: number, reached: ReadonlySet<number> | null = null, complaint: Float64Array | null = null,
  plausible: Readonly<Record<string, number>> = {},
): Float64Array {
  const priors = new Float64Array(host.problems.length + 1)
  let sum = 0
  host.problems.forEach((problem, row) => {
    const entry = reached === null || reached.size === 0 || reached.has(row) ? 1 : BESIDE_ENTRY_FACTOR
    const share = (host.commonness[row] ?? 0) * seasonFactor(guide.problems[problem]?.months ?? [], month) * entry * factorHere(guide.problems[problem], plausible)
    priors[row] = share
    sum += share
  })
  const notListed = notListedPrior(host)
  const listed = sum === 0 ? 0 : (1 - notListed) / sum
  for (let row = 0; row < host.problems.length; row++) priors[row] = Math.log((priors[row] ?? 0) * listed)
  priors[host.problems.length] = sum === 0 ? 0 : Math.log(notListed)
  if (complaint === null) return priors
  let total = 0
  complaint.forEach((weight, row) => { total += Math.exp(priors[row] ?? 0) * weight })
  return priors.map((prior, row) => prior + Math.log((complaint[row] ?? 1) / total))
}

/** Prior share, 0 to 1, of *something not listed here* on a host. */
export function notListedPrior(host: Host): number {
  return host.isOfAnyPlant ? NOT_LISTED_PRIOR_OF_ANY_PLANT : NOT_LISTED_PRIOR
}

/** How plausible a problem is in a month: 1 in season or when it has none, less beside it, least out of it. */
export function seasonFactor(months: readonly number[], month: number): number {
  if (months.length === 0 || months.includes(month)) return seasonFactors.inSeason
  const beside = [month === 1 ? 12 : month - 1, month === 12 ? 1 : month + 1]
  return beside.some((other) => months.includes(other)) ? seasonFactors.besideSeason : seasonFactors.outOfSeason
}

/** What the season multiplies a problem by, 1 where it says nothing. Caps hold here too: factors are kept with cases, and the table may change. */
function factorHere(problem: Problem | undefined, plausible: Readonly<Record<string, number>>): number {
  const factor = problem === undefined ? undefined : plausible[problem.id]
  if (problem === undefined || factor === undefined) return 1
  return Math.min(MOST_FACTOR, Math.max(problem.watch === null ? LEAST_FACTOR : LEAST_FACTOR_OF_WATCH, factor))
}
