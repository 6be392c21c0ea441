import { describe, expect, it } from 'vitest'
import { Belief, type DescribedCases, type Learnt, learnModel, seededRandom } from '../../src/engine/index.js'

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

  describe('under several misread rates', () => {
    const rates = [{ rate: 0.01, share: 0.7 }, { rate: 0.1, share: 0.3 }]
    /** P(problem, answers) of each problem: prior × Σ rows. */
    const joint = ({ model, logPriors }: Learnt, answers: readonly number[]): number[] => {
      const sums = new Array<number>(model.problems).fill(0)
      for (let row = 0; row < model.rows; row++) {
        const problem = model.problemOfRow[row] ?? 0
        const log = model.checks.reduce((sum, check, place) => sum + (check.log[row * check.answers + (answers[place] ?? 0)] ?? 0), (logPriors[problem] ?? 0) + (model.logRowShare[row] ?? 0))
        sums[problem] = (sums[problem] ?? 0) + Math.exp(log)
      }
      return sums
    }

    it('foretells answers by the mean of what each rate foretells', () => {
      const made = cases(60)
      const [careful, careless, both] = [0.01, 0.1, rates].map((misread) => learnModel(made, { ...options, looseness: 0.3, misread }))
      if (careful === undefined || careless === undefined || both === undefined) throw new Error('Three models were learnt.')
      for (const answers of [[0, 0, 0], [0, 1, 2], [1, 1, 1], [1, 0, 2]]) {
        const [first, second] = [joint(careful, answers), joint(careless, answers)]
        joint(both, answers).forEach((share, problem) => { expect(share).toBeCloseTo(0.7 * (first[problem] ?? 0) + 0.3 * (second[problem] ?? 0), 12) })
        const belief = new Belief(both.model)
        belief.start(both.logPriors)
        answers.forEach((answer, check) => { belief.see(check, answer) })
        const sum = joint(both, answers).reduce((total, share) => total + share, 0)
        joint(both, answers).forEach((share, problem) => { expect(belief.shares()[problem]).toBeCloseTo(share / sum, 10) })
      }
    })

    it('trusts a case less that fits in all but one answer', () => {
      // Problem 0 always shows the first answer, problem 1 the other. A rate m gives the odd answer m/2 of two, so with e = 0.005
      // and 0.05 two answers for problem 0 and one against have the odds Σ share (1 − e)² e ÷ Σ share (1 − e) e²
      // = (0.7 · 0.00495013 + 0.3 · 0.045125) ÷ (0.7 · 0.000024875 + 0.3 · 0.002375) = 0.01700259 ÷ 0.00072991 = 23.294: 95.88 %.
      // At the mean rate, 0.037, they are 0.9815 ÷ 0.0185 = 53.05: 98.15 %.
      const made: DescribedCases = { answers: [2, 2, 2], problems: 2, cases: [0, 1].map((answer) => ({ problem: answer, answers: Int8Array.from([answer, answer, answer]) })) }
      const claimed = (misread: number | typeof rates): number => {
        const { model, logPriors } = learnModel(made, { ...options, looseness: 0, smoothing: 0, misread, notListed: 1e-9 })
        const belief = new Belief(model)
        belief.start(logPriors)
        ;[0, 0, 1].forEach((answer, check) => { belief.see(check, answer) })
        return belief.shares()[0] ?? 0
      }
      expect(claimed(rates)).toBeCloseTo(0.95884, 4)
      expect(claimed(0.037)).toBeCloseTo(0.98150, 4)
    })

    it('is the model of one rate when there is but one', () => {
      const [alone, listed] = [0.03, [{ rate: 0.03, share: 1 }]].map((misread) => learnModel(cases(40), { ...options, misread }))
      expect(listed).toEqual(alone)
    })

    it('says so when there is none', () => {
      expect(() => learnModel(cases(10), { ...options, misread: [] })).toThrow('at least one misread rate')
    })
  })
})
