import { describe, expect, it } from 'vitest'
import { Belief, type DescribedCases, learnModel, seededRandom } from '../../src/engine/index.js'

const options = { looseness: 'fit', profileCases: 1, smoothing: 0.5, misread: 0.03, notListed: 0.01 } as const

/** Problem 0 shows yes-yes or no-no; problem 1 shows each by the toss of a coin; a third check is noise. */
function cases(count: number): DescribedCases {
  const random = seededRandom(11)
  return {
    answers: [2, 2, 3], problems: 2,
    cases: Array.from({ length: count }, (_, place) => {
      const first = random() < 0.5 ? 0 : 1
      const second = place % 2 === 0 ? first : random() < 0.5 ? 0 : 1
      return { problem: place % 2, answers: Int8Array.from([first, second, Math.floor(random() * 3)]) }
    }),
  }
}

describe('a model learnt from cases', () => {
  it('keeps together what is seen together, which profiles alone cannot', () => {
    const { model, logPriors } = learnModel(cases(200), options)
    const belief = new Belief(model)
    belief.start(logPriors)
    belief.see(0, 0)
    belief.see(1, 1)
    expect(belief.shares()[1]).toBeGreaterThan(0.85)
    belief.start(logPriors)
    belief.see(0, 0)
    belief.see(1, 0)
    expect(belief.shares()[0]).toBeGreaterThan(0.6)
  })

  it('is not moved by a check that means nothing', () => {
    const { model, logPriors } = learnModel(cases(200), options)
    const belief = new Belief(model)
    belief.start(logPriors)
    const before = belief.shares()[0] ?? 0
    belief.see(2, 1)
    expect(Math.abs((belief.shares()[0] ?? 0) - before)).toBeLessThan(0.15)
  })

  it('takes an answer that was not recorded for nothing at all', () => {
    const plain = cases(60)
    const { model } = learnModel({ ...plain, cases: plain.cases.map((one) => ({ ...one, answers: Int8Array.from([one.answers[0] ?? 0, -1, -1]) })) }, options)
    const belief = new Belief(model)
    belief.start(Float64Array.from([0.5, 0.49, 0.01], Math.log))
    expect(belief.gainBits(1)).toBeLessThan(0.01)
    expect(belief.gainBits(2)).toBeLessThan(0.01)
  })

  it('has shares of each check that sum to one in every row', () => {
    const { model } = learnModel(cases(20), options)
    for (const { share, answers } of model.checks) {
      for (let row = 0; row < model.rows; row++) {
        expect(share.slice(row * answers, (row + 1) * answers).reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12)
      }
    }
  })
})
