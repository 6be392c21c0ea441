import { describe, expect, it } from 'vitest'
import { buildMatchIndex, dangersIn, matchLine } from '../../src/match/index.js'
import { CALM_AFRESH, WORRIED_AFRESH } from './fresh-worries.js'
import { wholeGuide } from './small-guide.js'

const index = buildMatchIndex(await wholeGuide())
const raised = (words: string): readonly string[] => matchLine(index, words).redFlags
const raisedByPattern = (words: string): readonly string[] =>
  dangersIn(index, words).byPattern.filter(({ level }) => level === 'emergency').map(({ redFlag }) => redFlag)

describe('words that are weighed for a danger', () => {
  it('tell of more worries in odd words than the patterns hear', () => {
    const worried = WORRIED_AFRESH.map(([words]) => words)
    const byPattern = worried.filter((words) => raisedByPattern(words).length > 0).length
    const heard = worried.filter((words) => raised(words).length > 0).length
    expect(heard - byPattern).toBeGreaterThanOrEqual(10)
    expect(heard / worried.length).toBeGreaterThan(0.9)
  })

  it('add hardly an alarm to calm words that sound alike', () => {
    expect(CALM_AFRESH.filter((words) => raised(words).length > raisedByPattern(words).length).length / CALM_AFRESH.length).toBeLessThan(0.02)
  })

  it('add nothing where a pattern hears an emergency', () => {
    for (const words of ['dog ate a lily', 'my son swallowed a yew berry']) {
      expect(raisedByPattern(words)).not.toEqual([])
      expect(raised(words)).toEqual(raisedByPattern(words))
    }
  })

  it.each([
    'the baby hasn\'t swallowed any leaves', 'nobody has swallowed any of it', 'she never licked the sap', 'the dog hasnt chewed the bulbs yet',
  ])('tell of nothing where they are denied: %s', (words) => { expect(raised(words)).toEqual([]) })

  it('tell of nothing because each sentence of a long calm letter has one of them', () => {
    const letter = 'My son planted the bed. The dog sleeps by the lilies. We eat the beans. The tree by the house is tall. I bought a spray last year. The roses have thorns. '
    expect(raised(letter.repeat(6))).toEqual([])
  })
})
