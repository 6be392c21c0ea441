import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { logLikelihoods, MISREAD_RATE } from '../../src/guide/index.js'
import { frequencyWords, sharesFromWords } from '../../src/guide/frequency-words.js'

const shares = (table: Float64Array) => Array.from(table, (value) => Number(Math.exp(value).toFixed(9)))

describe('likelihoods of one check', () => {
  // Worked by hand: the background of answer 1 is 0.75 × 0.9 + 0.25 × 0.5 = 0.8; the row not listed is (0.8 + 0.5) / 2 = 0.65.
  it('gives a row a problem and one for something not listed, without misreading', () => {
    expect(shares(logLikelihoods([Float64Array.of(0.9, 0.1), null], Float64Array.of(0.75, 0.25), 2, 0)))
      .toEqual([0.9, 0.1, 0.8, 0.2, 0.65, 0.35])
  })

  it('spreads the chance of a misread answer over all answers', () => {
    expect(MISREAD_RATE).toBe(0.03)
    expect(shares(logLikelihoods([Float64Array.of(0.9, 0.1), null], Float64Array.of(0.75, 0.25), 2)))
      .toEqual([0.888, 0.112, 0.791, 0.209, 0.6455, 0.3545])
  })

  it('is even for something not listed where no problem mentions the check', () => {
    expect(shares(logLikelihoods([null, null], Float64Array.of(0.5, 0.5), 4, 0)).slice(-4)).toEqual([0.25, 0.25, 0.25, 0.25])
  })

  it('keeps an impossible answer possible, since people misread', () => {
    const [never] = logLikelihoods([Float64Array.of(0, 1)], Float64Array.of(1), 2)
    expect(Math.exp(never ?? 0)).toBeCloseTo(0.015, 12)
  })

  it('gives rows that each sum to 1 and stay finite', () => {
    const row = fc.option(fc.array(fc.option(fc.constantFrom(...frequencyWords), { nil: null }), { minLength: 3, maxLength: 3 }), { nil: null })
    fc.assert(fc.property(fc.array(fc.tuple(row, fc.constantFrom(0.3, 1, 3, 9)), { minLength: 1, maxLength: 5 }), (problems) => {
      const total = problems.reduce((sum, [, weight]) => sum + weight, 0)
      const table = logLikelihoods(
        problems.map(([words]) => (words === null ? null : sharesFromWords(words))), Float64Array.from(problems, ([, weight]) => weight / total), 3,
      )
      expect(table).toHaveLength((problems.length + 1) * 3)
      for (let at = 0; at < table.length; at += 3) {
        expect([...table.slice(at, at + 3)].reduce((sum, value) => sum + Math.exp(value), 0)).toBeCloseTo(1, 12)
      }
    }))
  })
})
