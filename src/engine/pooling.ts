/** Values tried: how many cases of a problem what is usual over all problems counts as. */
const CHOICES = [0.25, 0.5, 1, 2, 4, 8, 16, 32]

/**
 * How far one check's profiles are drawn to what is usual over all problems, learnt from the counts themselves: the
 * weight under which they are most probable when each problem's shares are a draw from a Dirichlet distribution around
 * the usual ones (type II maximum likelihood; Good 1965, The Estimation of Probabilities, from memory). A check that
 * sets problems apart gets little pooling; one whose few differences look like chance gets much, so that many faint
 * signs cannot add up to a verdict.
 * @param counts times each answer was recorded, problem by problem
 * @param usual share of each answer over all problems; above 0, sums to 1
 * @returns the weight, in cases
 */
export function fitPooling(counts: Float64Array, usual: Float64Array): number {
  let best = CHOICES[0] ?? 1
  let most = -Infinity
  for (const weight of CHOICES) {
    const fit = logEvidence(counts, usual, weight)
    if (fit <= most + 1e-9) continue
    most = fit
    best = weight
  }
  return best
}

/**
 * ln probability of the counts of all problems in the order they came, under a Dirichlet distribution of the given
 * weight around the usual shares (Pólya's urn: each answer is drawn with (weight × usual + seen so far) / (weight + drawn so far)).
 */
export function logEvidence(counts: Float64Array, usual: Float64Array, weight: number): number {
  const answers = usual.length
  let sum = 0
  for (let first = 0; first < counts.length; first += answers) {
    let drawn = 0
    for (let answer = 0; answer < answers; answer++) {
      const start = weight * (usual[answer] ?? 0)
      for (let seen = 0; seen < (counts[first + answer] ?? 0); seen++) {
        sum += Math.log((start + seen) / (weight + drawn))
        drawn += 1
      }
    }
  }
  return sum
}
