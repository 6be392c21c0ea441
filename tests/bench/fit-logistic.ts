/** One case to learn from: its signs, the first of them 1 for the base, and whether it is one of those looked for. */
export interface FitExample {
  readonly signs: readonly number[]
  readonly isRight: boolean
  /** How many cases it counts as; one when left out. */
  readonly weight?: number
}

const TURNS = 30

/**
 * Fits a logistic curve by Newton's method with a ridge on all but the base (iteratively reweighted least squares; Hastie,
 * Tibshirani & Friedman 2009, The Elements of Statistical Learning, section 4.4.1, from memory).
 * @param ridge how strongly the constants are held near 0
 * @returns a constant a sign, the base first
 */
export function fitLogistic(examples: readonly FitExample[], ridge: number): readonly number[] {
  const size = examples[0]?.signs.length ?? 0
  let beta = new Array<number>(size).fill(0)
  for (let turn = 0; turn < TURNS; turn += 1) {
    const gradient = beta.map((value, at) => (at === 0 ? 0 : -ridge * value))
    const hessian: number[][] = beta.map((_, row) => beta.map((__, column) => (row === column && row > 0 ? ridge : 0)))
    for (const { signs, isRight, weight = 1 } of examples) {
      const share = logistic(beta, signs)
      for (const [row, line] of hessian.entries()) {
        gradient[row] = (gradient[row] ?? 0) + weight * ((isRight ? 1 : 0) - share) * (signs[row] ?? 0)
        for (let column = 0; column < size; column += 1) line[column] = (line[column] ?? 0) + weight * share * (1 - share) * (signs[row] ?? 0) * (signs[column] ?? 0)
      }
    }
    const step = solve(hessian, gradient)
    beta = beta.map((value, at) => value + (step[at] ?? 0))
  }
  return beta
}

/** The fitted chance of a case, 0 to 1. */
export function logistic(beta: readonly number[], signs: readonly number[]): number {
  return 1 / (1 + Math.exp(-signs.reduce((sum, sign, at) => sum + sign * (beta[at] ?? 0), 0)))
}

/** Solves a system of linear equations by Gauss-Jordan elimination. It is to be small and positive definite, so no pivoting is needed. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((line, at) => [...line, right[at] ?? 0])
  for (let pivot = 0; pivot < rows.length; pivot += 1) {
    const line = rows[pivot] ?? []
    const scale = line[pivot] ?? 1
    for (let at = 0; at < line.length; at += 1) line[at] = (line[at] ?? 0) / scale
    for (const [row, other] of rows.entries()) {
      if (row === pivot) continue
      const factor = other[pivot] ?? 0
      for (let at = 0; at < other.length; at += 1) other[at] = (other[at] ?? 0) - factor * (line[at] ?? 0)
    }
  }
  return rows.map((line) => line[line.length - 1] ?? 0)
}
