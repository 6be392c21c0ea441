import { describe, expect, it } from 'vitest'
import { frequencyShares } from '../../src/guide/index.js'

/**
 * Medians in per cent of a survey of about 238 science writers: Mosteller F., Youtz C. (1990), Quantifying probabilistic
 * expressions, Statistical Science 5(1): 2-12, Table 2. Read in a public transcription of the table (v2-io/hedge-embeddings,
 * docs/mosteller_youtz_1990_full.csv), a second-hand copy; the paper itself was seen only as its abstract.
 */
const medians: readonly (readonly [keyof typeof frequencyShares, number])[] = [
  ['always', 99.7], ['almost always', 91.7], ['very often', 82.8], ['usually', 75.1], ['often', 72.5], ['as often as not', 50.0],
  ['sometimes', 25.0], ['occasionally', 20.0], ['seldom', 10.2], ['rarely', 7.2], ['almost never', 2.9], ['never', 0.3],
]

/** Quartiles of the same table. */
const quartiles: readonly (readonly [keyof typeof frequencyShares, number, number])[] = [
  ['almost always', 89.7, 95.2], ['very often', 77.5, 89.9], ['usually', 65.6, 82.2], ['often', 65.0, 75.4], ['as often as not', 49.8, 50.3],
  ['sometimes', 17.5, 35.0], ['occasionally', 12.5, 27.7], ['seldom', 7.4, 17.5], ['rarely', 3.6, 10.0], ['almost never', 1.2, 4.6],
]

describe('frequency words against the published survey', () => {
  it('has a share for exactly the words of the table that profiles use', () => {
    expect(Object.keys(frequencyShares)).toEqual(medians.map(([word]) => word))
  })

  it.each(medians.filter(([word]) => word !== 'always' && word !== 'never'))('takes the median for *%s*: %d %%', (word, median) => {
    expect(frequencyShares[word] * 100).toBeCloseTo(median, 10)
  })

  // 99 and 1 % are our own limits, so that one answer can never rule a cause in or out alone.
  it('holds *always* at 99 % and *never* at 1 %, inside the published 99.7 and 0.3', () => {
    expect(frequencyShares.always).toBe(0.99)
    expect(frequencyShares.never).toBe(0.01)
  })

  it('keeps the order of the published medians', () => {
    const shares = medians.map(([word]) => frequencyShares[word])
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
    expect(new Set(shares).size).toBe(shares.length)
  })

  it.each(quartiles)('lies between the published quartiles for *%s*: %d to %d %%', (word, low, high) => {
    expect(frequencyShares[word] * 100).toBeGreaterThan(low)
    expect(frequencyShares[word] * 100).toBeLessThan(high)
  })
})
