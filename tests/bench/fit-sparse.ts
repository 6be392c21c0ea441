/** A letter to learn from: the numbers and values of its signs. */
export interface SparseExample {
  readonly signs: readonly (readonly [number, number])[]
  readonly isRight: boolean
  /** How many letters it counts as. */
  readonly weight: number
}

export interface SparseFit {
  readonly base: number
  readonly weights: Float64Array
}

/** How strongly weights are held near 0 (ridge, half its square) and at 0 (lasso, its size). */
export interface Holding {
  readonly ridge: number
  readonly lasso: number
}

/**
 * Fits a logistic curve over very many signs of which each letter has few, most weights exactly 0: cyclic coordinate
 * descent with a bound of the curvature (Genkin, Lewis and Madigan, Large-scale Bayesian logistic regression for text
 * categorization, Technometrics 49, 2007; the soft threshold as in Friedman, Hastie and Tibshirani, Regularization paths
 * for generalized linear models via coordinate descent, Journal of Statistical Software 33, 2010; both from memory).
 * The right and the others get the same weight in all.
 * @param width how many signs there are
 */
export function fitSparse(examples: readonly SparseExample[], width: number, { ridge, lasso }: Holding): SparseFit {
  const total = examples.reduce((sum, { weight }) => sum + weight, 0)
  const right = examples.reduce((sum, { isRight, weight }) => sum + (isRight ? weight : 0), 0)
  const counts = Float64Array.from(examples, ({ isRight, weight }) => weight * total / (2 * (isRight ? right : total - right)))
  const wanted = Float64Array.from(examples, ({ isRight }) => (isRight ? 1 : 0))
  const columns: { rows: number[]; values: number[] }[] = Array.from({ length: width }, () => ({ rows: [], values: [] }))
  for (const [row, { signs }] of examples.entries()) for (const [sign, value] of signs) { columns[sign]?.rows.push(row); columns[sign]?.values.push(value) }
  const odds = new Float64Array(examples.length)
  const weights = new Float64Array(width)
  let base = 0
  const bound = (rows: readonly number[], values: readonly number[]): number => rows.reduce((sum, row, at) => sum + (counts[row] ?? 0) * (values[at] ?? 0) ** 2 / 4, 0)
  const curvatures = columns.map(({ rows, values }) => bound(rows, values) + ridge)
  const slope = (row: number): number => (counts[row] ?? 0) * (1 / (1 + Math.exp(-(odds[row] ?? 0))) - (wanted[row] ?? 0))
  for (let turn = 0; turn < TURNS; turn += 1) {
    let moved = 0
    let lean = 0
    for (let row = 0; row < odds.length; row += 1) lean += slope(row)
    const shift = lean / (total / 4)
    base -= shift
    for (let row = 0; row < odds.length; row += 1) odds[row] = (odds[row] ?? 0) - shift
    for (const [sign, { rows, values }] of columns.entries()) {
      const so = weights[sign] ?? 0
      // Most signs are at 0 and stay there: they are looked at every eighth turn.
      if (so === 0 && turn % 8 !== 0) continue
      let pull = ridge * so
      for (let at = 0; at < rows.length; at += 1) pull += slope(rows[at] ?? 0) * (values[at] ?? 0)
      const curvature = curvatures[sign] ?? 1
      const free = so - pull / curvature
      const next = Math.sign(free) * Math.max(0, Math.abs(free) - lasso / curvature)
      if (next === so) continue
      weights[sign] = next
      moved = Math.max(moved, Math.abs(next - so))
      for (let at = 0; at < rows.length; at += 1) { const row = rows[at] ?? 0; odds[row] = (odds[row] ?? 0) + (next - so) * (values[at] ?? 0) }
    }
    if (moved < SETTLED && turn % 8 === 0) break
  }
  return { base, weights }
}

/** What the signs of a letter say, in natural log odds. */
export function oddsOf({ base, weights }: SparseFit, signs: SparseExample['signs']): number {
  return signs.reduce((sum, [sign, value]) => sum + (weights[sign] ?? 0) * value, base)
}

const TURNS = 400
const SETTLED = 0.003
