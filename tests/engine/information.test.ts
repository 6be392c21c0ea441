import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Belief, entropyBits, expectedGainBits } from '../../src/engine/index.js'
import { logTable, plainModel } from './plain-model.js'

/** P(problem) after one answer to the only check. */
function after(prior: Float64Array, table: Float64Array, answer: number): Float64Array {
  const belief = new Belief(plainModel(prior.length, [table]))
  belief.start(prior.map(Math.log))
  belief.see(0, answer)
  return belief.shares()
}

describe('entropy', () => {
  // H = −Σ p log2 p: Shannon 1948, Bell Syst. Tech. J. 27. The figures are computed from the formula.
  it.each([
    [[1 / 8, 1 / 8, 1 / 8, 1 / 8, 1 / 8, 1 / 8, 1 / 8, 1 / 8], 3.0],
    [[0.5, 0.25, 0.125, 0.125], 1.75],
    [[0.4, 0.3, 0.15, 0.1, 0.05], 2.0087],
    [[0.2, 0.2, 0.2, 0.2, 0.2], 2.3219],
    [[0.9, 0.05, 0.03, 0.02], 0.6175],
  ])('of %j is %d bits', (shares, bits) => {
    expect(entropyBits(Float64Array.from(shares))).toBeCloseTo(bits, 4)
  })
})

describe('a worked example of Bayes\' rule and information gain', () => {
  // Prior (.5, .3, .2), P(yes | cause) = (.9, .2, .1). By hand: P(yes) = .45 + .06 + .02 = .53;
  // after yes (.45, .06, .02)/.53; after no (.05, .24, .18)/.47; gain = 1.4855 − .53 × .7347 − .47 × 1.3693 = .4525.
  const prior = Float64Array.from([0.5, 0.3, 0.2])
  const table = logTable([[0.9, 0.1], [0.2, 0.8], [0.1, 0.9]])

  it('moves the prior as worked by hand', () => {
    const yes = after(prior, table, 0)
    const no = after(prior, table, 1)
    expect(Array.from(yes, (p) => p.toFixed(5))).toEqual(['0.84906', '0.11321', '0.03774'])
    expect(Array.from(no, (p) => p.toFixed(5))).toEqual(['0.10638', '0.51064', '0.38298'])
    expect(entropyBits(yes)).toBeCloseTo(0.7347, 4)
    expect(entropyBits(no)).toBeCloseTo(1.3693, 4)
  })

  it('gains 0.4525 bits', () => {
    expect(expectedGainBits(prior, table)).toBeCloseTo(0.4525, 4)
  })

  it('gains nothing from a check whose answers are equally likely everywhere', () => {
    expect(expectedGainBits(prior, logTable([[0.4, 0.6], [0.4, 0.6], [0.4, 0.6]]))).toBeCloseTo(0, 12)
  })
})

describe('expected information gain', () => {
  const share = fc.double({ min: 0.001, max: 1, noNaN: true })
  const normal = (weights: readonly number[]): number[] => weights.map((weight) => weight / weights.reduce((a, b) => a + b, 0))
  const world = fc.integer({ min: 2, max: 6 }).chain((rows) => fc.integer({ min: 2, max: 5 }).chain((answers) => fc.record({
    prior: fc.array(share, { minLength: rows, maxLength: rows }).map(normal),
    rows: fc.array(fc.array(share, { minLength: answers, maxLength: answers }).map(normal), { minLength: rows, maxLength: rows }),
  })))

  it('is never negative and never more than the entropy there is', () => {
    fc.assert(fc.property(world, ({ prior, rows }) => {
      const gain = expectedGainBits(Float64Array.from(prior), logTable(rows))
      expect(gain).toBeGreaterThanOrEqual(0)
      expect(gain).toBeLessThanOrEqual(entropyBits(Float64Array.from(prior)) + 1e-9)
    }))
  })

  it('is the same by the quick way that the engine uses', () => {
    fc.assert(fc.property(world, ({ prior, rows }) => {
      const belief = new Belief(plainModel(prior.length, [logTable(rows)]))
      belief.start(Float64Array.from(prior, Math.log))
      expect(belief.gainBits(0)).toBeCloseTo(expectedGainBits(Float64Array.from(prior), logTable(rows)), 8)
    }))
  })

  it('equals the slow way: entropy now, less the mean entropy after each answer', () => {
    fc.assert(fc.property(world, ({ prior, rows }) => {
      const table = logTable(rows)
      const before = Float64Array.from(prior)
      let later = 0
      for (let answer = 0; answer < (rows[0]?.length ?? 0); answer++) {
        const share = rows.reduce((sum, row, number) => sum + (prior[number] ?? 0) * (row[answer] ?? 0), 0)
        later += share * entropyBits(after(before, table, answer))
      }
      expect(expectedGainBits(before, table)).toBeCloseTo(entropyBits(before) - later, 8)
    }))
  })
})
