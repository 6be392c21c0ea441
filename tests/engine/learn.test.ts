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

  it('keeps one row for cases that are alike in all, with the weight of both', () => {
    const once = { problem: 0, answers: Int8Array.from([0]) }
    const other = { problem: 1, answers: Int8Array.from([1]) }
    const { model } = learnModel({ answers: [2], problems: 2, cases: [once, once, other] }, { ...options, looseness: 0.3 })
    expect(Array.from(model.problemOfRow)).toEqual([0, 1, 0, 1, 2])
    expect(Array.from(model.logRowShare).slice(0, 4).map(Math.exp).map((share) => share.toFixed(6))).toEqual(['0.333333', '0.500000', '0.666667', '0.500000'])
  })

  it('lets faint signs say less when each check is pooled by itself', () => {
    const random = seededRandom(5)
    // One check decides; six show either answer by the toss of a coin, whatever the problem.
    const made: DescribedCases = {
      answers: [2, 2, 2, 2, 2, 2, 2], problems: 2,
      cases: Array.from({ length: 24 }, (_, place) => ({
        problem: place % 2, answers: Int8Array.from([place % 2, ...Array.from({ length: 6 }, () => (random() < 0.5 ? 0 : 1))]),
      })),
    }
    const swing = (smoothing: number | 'fit'): number => {
      const { model, logPriors } = learnModel(made, { ...options, looseness: 1, smoothing })
      const belief = new Belief(model)
      let most = 0
      for (let answers = 0; answers < 64; answers++) {
        belief.start(logPriors)
        for (let check = 0; check < 6; check++) belief.see(check + 1, (answers >> check) & 1)
        most = Math.max(most, belief.shares()[0] ?? 0)
      }
      return most
    }
    expect(swing('fit')).toBeLessThan(swing(0.5) - 0.1)
  })

  it('finds the looseness that goes with a sure sign and with a toss of a coin', () => {
    const { looseness } = learnModel(cases(200), { ...options, smoothing: 'fit' })
    expect(looseness[2]).toBe(1)
    expect(looseness[1]).toBeLessThan(0.7)
  })
})
