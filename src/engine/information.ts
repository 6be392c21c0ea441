/** Shannon entropy of a distribution, in bits: H = −Σ p log2 p (Shannon 1948). */
export function entropyBits(probabilities: Float64Array): number {
  let bits = 0
  for (const p of probabilities) if (p > 0) bits -= p * Math.log2(p)
  return bits
}

/**
 * Expected information gain of asking one check, in bits: H(problem) − Σ_a P(a) H(problem | a). Never negative.
 * @param probabilities P(problem), the last row *something not listed here*
 * @param table ln P(answer | problem), row by row
 */
export function expectedGainBits(probabilities: Float64Array, table: Float64Array): number {
  const rows = probabilities.length
  const answers = table.length / rows
  // Mutual information I = H(answer) − Σ_p P(p) H(answer | p): the same figure with one pass and no rescaling.
  let gain = 0
  for (let answer = 0; answer < answers; answer++) {
    let share = 0
    for (let row = 0; row < rows; row++) share += (probabilities[row] ?? 0) * Math.exp(table[row * answers + answer] ?? 0)
    if (share <= 0) continue
    const logShare = Math.log(share)
    for (let row = 0; row < rows; row++) {
      const log = table[row * answers + answer] ?? 0
      gain += (probabilities[row] ?? 0) * Math.exp(log) * (log - logShare)
    }
  }
  return Math.max(0, gain / Math.LN2)
}
