import { describe, expect, it } from 'vitest'
import { fitSparse, type SparseExample } from './fit-sparse.js'

const example = (signs: readonly number[], isRight: boolean): SparseExample => ({ signs: signs.map((sign) => [sign, 1] as const), isRight, weight: 1 })

describe('fitting a curve over many signs', () => {
  it('meets the closed form where there is one sign and hardly any holding', () => {
    // Sign 0 in 3 of 4 right and 1 of 4 others: ln odds with it ln 3, without it -ln 3, so the base is -ln 3 and the weight 2 ln 3.
    const examples = [...[1, 1, 1, 0].map((has) => example(has === 1 ? [0] : [], true)), ...[1, 0, 0, 0].map((has) => example(has === 1 ? [0] : [], false))]
    const { base, weights } = fitSparse(examples, 1, { ridge: 1e-6, lasso: 0 })
    expect(base).toBeCloseTo(-Math.log(3), 1)
    expect(weights[0]).toBeCloseTo(2 * Math.log(3), 1)
  })

  it('leaves signs that tell nothing at exactly 0, and all of them where the holding is strong', () => {
    const examples = Array.from({ length: 40 }, (_, at) => example([at % 2, 2 + (at % 4 < 2 ? 0 : 1)], at % 2 === 0))
    const { weights } = fitSparse(examples, 4, { ridge: 0.1, lasso: 0.5 })
    expect(weights[0]).toBeGreaterThan(0.5)
    expect([weights[2], weights[3]]).toEqual([0, 0])
    expect([...fitSparse(examples, 4, { ridge: 0.1, lasso: 100 }).weights]).toEqual([0, 0, 0, 0])
  })
})
