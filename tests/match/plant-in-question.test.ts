import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion, plantSignsIn } from '../../src/match/index.js'
import { plantsInQuestion } from '../../src/match/plant-in-question.js'
import { wholeGuide } from '../whole-guide.js'

const SIGNS = 15
const none = new Array<number>(SIGNS).fill(0)

describe('the plant in question among several', () => {
  it('is likelier the earlier it is named, by conditional logit', () => {
    // Worked by hand with the fitted -4.43 for the place in the text: at the start e^0 = 1, halfway e^-2.215 = 0.1092; 1 / 1.1092 = 0.902.
    const halfway = none.map((_, at) => (at === 2 ? 0.5 : 0))
    const shares = plantsInQuestion(new Map([[7, none], [9, halfway]]))
    expect(shares.get(7)).toBeCloseTo(0.902, 3)
    expect(shares.get(9)).toBeCloseTo(0.098, 3)
  })

  it('has a share of one with all the others, in whatever order they stand', () => {
    const signs = fc.array(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: SIGNS, maxLength: SIGNS }), { minLength: 1, maxLength: 6 })
    fc.assert(fc.property(signs, (plants) => {
      const numbered = plants.map((values, at) => [at, values] as const)
      const shares = plantsInQuestion(new Map(numbered))
      expect([...shares.values()].reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
      const reversed = plantsInQuestion(new Map([...numbered].reverse()))
      for (const [at, share] of shares) expect(reversed.get(at)).toBeCloseTo(share, 9)
    }))
  })
})

describe('a letter that names several plants', async () => {
  const index = buildMatchIndex(await wholeGuide())

  // Invented for this test after the constants were fitted; which plant is meant is plain from the words.
  it.each([
    ['My viburnum has notches round the leaf edges and wobbles in its hole. There are bites out of the privet too.', 'viburnum'],
    ['orange specks all under the leaves of our fuchsia in the porch, the begonias beside the step are the same colour as ever', 'fuchsia'],
    ['The quince in the corner has dark blots on every leaf. Last year only a few. Might it pass to the roses?', 'pear'],
    ['pods hanging off my redbud by the hundred, like bean pods', 'redbud'],
  ])('is about the one that it tells of: %s', (words, host) => {
    expect(matchQuestion(index, words).hosts[0]?.host).toBe(host)
  })

  it('has signs for each of them, and a letter that names one has none', () => {
    expect([...plantSignsIn(index, 'my viburnum has holes and so has the privet').keys()].sort()).toEqual(['hedging-shrub', 'viburnum'])
    expect(plantSignsIn(index, 'my viburnum has holes').size).toBe(0)
  })
})
