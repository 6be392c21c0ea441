import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frequencyShares, sharesFromWords } from '../../src/guide/index.js'
import { frequencyWords } from '../../src/guide/frequency-words.js'

const written = fc.array(fc.option(fc.constantFrom(...frequencyWords), { nil: null }), { minLength: 1, maxLength: 6 })
const rounded = (shares: Float64Array) => Array.from(shares, (share) => Number(share.toFixed(6)))

describe('shares from frequency words', () => {
  it('gives what is left of 1 in equal parts to the answers without a word', () => {
    expect(rounded(sharesFromWords(['usually', null, null]))).toEqual([0.751, 0.1245, 0.1245])
  })

  it('scales words that add up to more than 1', () => {
    expect(rounded(sharesFromWords(['usually', 'as often as not']))).toEqual([Number((0.751 / 1.251).toFixed(6)), Number((0.5 / 1.251).toFixed(6))])
  })

  it('leaves an unmentioned answer 1 % even where the words fill the whole', () => {
    expect(rounded(sharesFromWords(['usually', 'as often as not', null]))[2]).toBe(Number((0.01 / 1.261).toFixed(6)))
  })

  it('is even where nothing is mentioned', () => {
    expect(rounded(sharesFromWords([null, null, null, null]))).toEqual([0.25, 0.25, 0.25, 0.25])
  })

  it('gives nothing for no answers', () => {
    expect(sharesFromWords([])).toHaveLength(0)
  })

  it('always sums to 1, and never rules an answer in or out alone', () => {
    fc.assert(fc.property(written, (words) => {
      const shares = Array.from(sharesFromWords(words))
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
      if (words.length < 2) return
      for (const share of shares) {
        expect(share).toBeGreaterThan(0.001)
        expect(share).toBeLessThan(0.999)
      }
    }))
  })

  it('keeps the order of the words within one check', () => {
    fc.assert(fc.property(written, (words) => {
      const shares = sharesFromWords(words)
      words.forEach((word, one) => words.forEach((otherWord, other) => {
        if (word === null || otherWord === null) return
        expect(Math.sign((shares[one] ?? 0) - (shares[other] ?? 0))).toBe(Math.sign(frequencyShares[word] - frequencyShares[otherWord]))
      }))
    }))
  })
})
