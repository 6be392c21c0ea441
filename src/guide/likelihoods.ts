/** Chance that a person picks a wrong answer at one check; spread over all answers. Our judgement until measured. */
export const MISREAD_RATE = 0.03

/**
 * ln P(answer | problem) for one check of one host, row by row: a row a problem, then one for *something not listed here*.
 *
 * - A profile that does not mention the check is neutral: its row is the host's background, the mean of all rows weighted
 *   by how common the problems are, where an unmentioned row counts as even odds.
 * - *something not listed here* is halfway between that background and even odds: it fits anything, and nothing well.
 * - Every row allows for a misread answer: P' = (1 − r) P + r / (number of answers).
 *
 * @param shares P(answer | problem) per problem, or null where the profile does not mention the check
 * @param commonness share of each problem among the host's complaints, summing to 1
 * @param answers number of answers of the check
 * @param misread chance of a wrong answer, 0 to 1
 */
export function logLikelihoods(
  shares: readonly (Float64Array | null)[], commonness: Float64Array, answers: number, misread = MISREAD_RATE,
): Float64Array {
  const background = new Float64Array(answers)
  shares.forEach((row, problem) => {
    const weight = commonness[problem] ?? 0
    for (let answer = 0; answer < answers; answer++) {
      background[answer] = (background[answer] ?? 0) + weight * (row === null ? 1 / answers : row[answer] ?? 0)
    }
  })
  const table = new Float64Array((shares.length + 1) * answers)
  const put = (row: number, share: (answer: number) => number): void => {
    for (let answer = 0; answer < answers; answer++) {
      table[row * answers + answer] = Math.log((1 - misread) * share(answer) + misread / answers)
    }
  }
  shares.forEach((row, problem) => put(problem, (answer) => (row ?? background)[answer] ?? 0))
  put(shares.length, (answer) => ((background[answer] ?? 0) + 1 / answers) / 2)
  return table
}
