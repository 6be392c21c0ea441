import { describe, expect, it } from 'vitest'
import { fitLooseness, type WholeProfile } from '../../src/engine/looseness.js'

const choices = [0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1]

/** A profile of one check with three answers, drawn to even odds as if by four more cases. */
function profileOf(answers: readonly number[]): WholeProfile {
  return {
    shares: Float64Array.from([0, 1, 2], (answer) => (answers.filter((one) => one === answer).length + 4 / 3) / (answers.length + 4)),
    recorded: Float64Array.from([answers.length]), pooling: 4,
  }
}

/** ln P(each case | the others), written out one by one: every other case counts once, the profile of the others as `profileCases`. */
function slowly(answers: readonly number[], looseness: number, profileCases: number): number {
  let sum = 0
  answers.forEach((own, place) => {
    const others = answers.filter((_, other) => other !== place)
    const usual = profileOf(others).shares[own] ?? 0
    const foretold = others.map((answer) => (1 - looseness) * (answer === own ? 1 : 0) + looseness * usual)
    sum += Math.log(foretold.reduce((all, share) => all + share, profileCases * usual))
  })
  return sum
}

describe('how loosely a check binds', () => {
  it.each([
    ['clear', [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1], 0.05],
    ['nearly clear', [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1], 0.5],
    ['mixed', [0, 1, 2, 0, 1, 2, 0, 1, 2, 0, 1, 2], 1],
  ])('is what foretells each case best by the others: %s cases', (_, answers, expected) => {
    const cases = answers.map((answer) => ({ problem: 0, answers: Int8Array.from([answer]) }))
    const [fitted] = fitLooseness({ answers: [3], problems: 1, cases }, [profileOf(answers)], 1, 0.35)
    const [best] = [...choices].sort((a, b) => slowly(answers, b, 1) - slowly(answers, a, 1))
    expect(fitted).toBe(best)
    expect(fitted).toBe(expected)
  })
})
