import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Belief, checkModel, type Model } from '../../src/engine/index.js'
import { logTable, plainModel } from './plain-model.js'

const share = fc.double({ min: 0.01, max: 1, noNaN: true })
const normal = (weights: readonly number[]): number[] => weights.map((weight) => weight / weights.reduce((a, b) => a + b, 0))

/** A world of 2 to 5 problems, 2 to 4 checks of 2 to 4 answers, and one answer to each check. */
const world = fc.record({ problems: fc.integer({ min: 2, max: 5 }), checks: fc.integer({ min: 2, max: 4 }), answers: fc.integer({ min: 2, max: 4 }) })
  .chain(({ problems, checks, answers }) => fc.record({
    prior: fc.array(share, { minLength: problems, maxLength: problems }).map(normal),
    tables: fc.array(
      fc.array(fc.array(share, { minLength: answers, maxLength: answers }).map(normal), { minLength: problems, maxLength: problems }),
      { minLength: checks, maxLength: checks },
    ),
    seen: fc.array(fc.nat(answers - 1), { minLength: checks, maxLength: checks }),
  }))

function startedAt(model: Model, prior: readonly number[]): Belief {
  const belief = new Belief(model)
  belief.start(Float64Array.from(prior, Math.log))
  return belief
}

describe('belief', () => {
  it('is the same as multiplying prior and likelihoods out and dividing by their sum', () => {
    fc.assert(fc.property(world, ({ prior, tables, seen }) => {
      const belief = startedAt(plainModel(prior.length, tables.map(logTable)), prior)
      seen.forEach((answer, check) => { belief.see(check, answer) })
      const slow = normal(prior.map((weight, problem) => seen.reduce((product, answer, check) => product * (tables[check]?.[problem]?.[answer] ?? 0), weight)))
      Array.from(belief.shares()).forEach((quick, problem) => { expect(quick).toBeCloseTo(slow[problem] ?? 0, 9) })
    }))
  })

  it('sums to one and does not depend on the order of the answers', () => {
    fc.assert(fc.property(world, ({ prior, tables, seen }) => {
      const model = plainModel(prior.length, tables.map(logTable))
      const one = startedAt(model, prior)
      const other = startedAt(model, prior)
      seen.forEach((answer, check) => { one.see(check, answer) })
      seen.map((answer, check) => ({ answer, check })).reverse().forEach(({ answer, check }) => { other.see(check, answer) })
      expect(one.shares().reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12)
      one.shares().forEach((part, problem) => { expect(part).toBeCloseTo(other.shares()[problem] ?? 0, 12) })
    }))
  })

  it('never lowers a problem by an answer that fits it better than any other', () => {
    fc.assert(fc.property(world, ({ prior, tables, seen }) => {
      const belief = startedAt(plainModel(prior.length, tables.map(logTable)), prior)
      seen.slice(1).forEach((answer, place) => { belief.see(place + 1, answer) })
      const answer = seen[0] ?? 0
      const fits = (tables[0] ?? []).map((row) => row[answer] ?? 0)
      const best = fits.indexOf(Math.max(...fits))
      const before = belief.shares()[best] ?? 0
      belief.see(0, answer)
      expect(belief.shares()[best] ?? 0).toBeGreaterThanOrEqual(before - 1e-12)
    }))
  })

  it('ignores a check or an answer that does not exist', () => {
    const belief = startedAt(plainModel(2, [logTable([[0.9, 0.1], [0.2, 0.8]])]), [0.5, 0.5])
    belief.see(7, 0)
    belief.see(0, 9)
    belief.see(0, -1)
    expect(Array.from(belief.shares())).toEqual([0.5, 0.5])
  })

  it('can be started again', () => {
    const belief = startedAt(plainModel(2, [logTable([[0.9, 0.1], [0.2, 0.8]])]), [0.5, 0.5])
    belief.see(0, 0)
    belief.start(Float64Array.from([0.3, 0.7], Math.log))
    expect(belief.shares()[0]).toBeCloseTo(0.3, 12)
  })
})

describe('checks that see the same sign', () => {
  const fuzz = logTable([[0.9, 0.1], [0.2, 0.8], [0.3, 0.7]])
  const prior = [0.4, 0.3, 0.3]

  it('do not make the answer surer when the same thing is asked twice', () => {
    const once = startedAt(plainModel(3, [fuzz, fuzz], [0, 0]), prior)
    once.see(0, 0)
    const twice = startedAt(plainModel(3, [fuzz, fuzz], [0, 0]), prior)
    twice.see(0, 0)
    twice.see(1, 0)
    expect(Array.from(twice.shares())).toEqual(Array.from(once.shares()))
  })

  it('would make it surer if they were not grouped', () => {
    const once = startedAt(plainModel(3, [fuzz, fuzz]), prior)
    once.see(0, 0)
    const single = once.shares()[0] ?? 0
    once.see(1, 0)
    expect(once.shares()[0]).toBeGreaterThan(single + 0.05)
  })

  it('count the strongest of what they say, for and against, in any order', () => {
    const other = logTable([[0.6, 0.4], [0.5, 0.5], [0.4, 0.6]])
    const model = plainModel(3, [fuzz, other], [0, 0])
    const one = startedAt(model, prior)
    one.see(0, 0)
    one.see(1, 0)
    const two = startedAt(model, prior)
    two.see(1, 0)
    two.see(0, 0)
    one.shares().forEach((part, problem) => { expect(part).toBeCloseTo(two.shares()[problem] ?? 0, 12) })
  })

  it('are not worth asking once one of them is answered', () => {
    const belief = startedAt(plainModel(3, [fuzz, fuzz], [0, 0]), prior)
    expect(belief.gainBits(1)).toBeGreaterThan(0.1)
    belief.see(0, 0)
    expect(belief.gainBits(1)).toBe(0)
  })
})

describe('a problem that takes several forms', () => {
  // One problem shows as (yes, yes) or (no, no), half the time each; the other answers by the toss of a coin.
  const model: Model = {
    problems: 2, rows: 3, problemOfRow: Int32Array.from([0, 0, 1]), logRowShare: Float64Array.from([0.5, 0.5, 1], Math.log), groups: 0,
    checks: [0, 1].map(() => checkModel(logTable([[0.9, 0.1], [0.1, 0.9], [0.5, 0.5]]), Float64Array.from([0.25, 0.25, 0.5]), 1)),
  }

  it('is told by how its signs go together, which single checks cannot show', () => {
    const belief = startedAt(model, [0.5, 0.5])
    expect(belief.gainBits(0)).toBeCloseTo(0, 12)
    belief.see(0, 0)
    expect(belief.shares()[0]).toBeCloseTo(0.5, 12)
    expect(belief.gainBits(1)).toBeGreaterThan(0.05)
    belief.see(1, 0)
    // By hand: form one .9 × .9, form two .1 × .1, their mean .41; the other .25; .41 / .66.
    expect(belief.shares()[0]).toBeCloseTo(0.41 / 0.66, 12)
  })

  it('has the gain that multiplying out gives', () => {
    const belief = startedAt(model, [0.5, 0.5])
    belief.see(0, 0)
    // P(yes | problem, first yes) = (.81 + .01) / (.9 + .1) = .82; the other .5; shares .5 and .5.
    const entropy = (p: number): number => -(p * Math.log2(p) + (1 - p) * Math.log2(1 - p))
    expect(belief.gainBits(1)).toBeCloseTo(entropy(0.66) - 0.5 * entropy(0.82) - 0.5 * entropy(0.5), 10)
  })
})

describe('the gain of a check between two problems alone', () => {
  const entropy = (...shares: number[]): number => -shares.reduce((sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0), 0)

  it('leaves every other problem out, worked by hand', () => {
    // Shares .6, .2, .2; between the first two 3 : 1. P(yes) = .75 × .9 + .25 × .4 = .775; P(first | yes) = .675 / .775, P(first | no) = .075 / .225 = 1/3.
    const belief = startedAt(plainModel(3, [logTable([[0.9, 0.1], [0.4, 0.6], [0.01, 0.99]])]), [0.6, 0.2, 0.2])
    const byHand = entropy(0.75, 0.25) - 0.775 * entropy(0.675 / 0.775, 0.1 / 0.775) - 0.225 * entropy(1 / 3, 2 / 3)
    expect(belief.gainBetween(0, 0, 1)).toBeCloseTo(byHand, 10)
    expect(belief.gainBetween(0, 1, 0)).toBeCloseTo(byHand, 10)
  })

  it('is nothing where the two show the same, however different a third is', () => {
    const belief = startedAt(plainModel(3, [logTable([[0.7, 0.3], [0.7, 0.3], [0.01, 0.99]])]), [0.5, 0.3, 0.2])
    expect(belief.gainBetween(0, 0, 1)).toBeCloseTo(0, 12)
    expect(belief.gainBits(0)).toBeGreaterThan(0.1)
  })

  it('is the whole gain where there are only two, in one form or in several, and whatever has a say in what is asked', () => {
    fc.assert(fc.property(fc.array(share, { minLength: 9, maxLength: 9 }), fc.constantFrom(1, 1.5, 3), ([a = 0.5, b = 0.5, c = 0.5, d = 0.5, e = 0.5, f = 0.5, g = 0.5, h = 0.5, p = 0.5], focus) => {
      const tables = [[[a, b], [c, d], [e, f]], [[g, h], [d, a], [b, g]]].map((rows) => logTable(rows.map(normal)))
      const model: Model = {
        problems: 2, rows: 3, problemOfRow: Int32Array.from([0, 0, 1]), logRowShare: Float64Array.from([0.3, 0.7, 1], Math.log), groups: 0,
        checks: tables.map((table) => checkModel(table, Float64Array.from([0.15, 0.35, 0.5]), 1)),
      }
      const [plain, focused] = [new Belief(model), new Belief(model, focus)]
      for (const belief of [plain, focused]) {
        belief.start(Float64Array.from(normal([p, 1]), Math.log))
        belief.see(0, 0)
      }
      expect(focused.gainBetween(1, 0, 1)).toBeCloseTo(plain.gainBits(1), 8)
    }))
  })

  it('is nothing for a check whose sign has been seen', () => {
    const fuzz = logTable([[0.9, 0.1], [0.2, 0.8]])
    const belief = startedAt(plainModel(2, [fuzz, fuzz], [0, 0]), [0.5, 0.5])
    expect(belief.gainBetween(1, 0, 1)).toBeGreaterThan(0.1)
    belief.see(0, 0)
    expect(belief.gainBetween(1, 0, 1)).toBe(0)
  })
})
