import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { ALARMED_ONCE, MISSED_ONCE, ONLY_CAUTION, SAME_NOUNS, UNUSUAL } from './spoken-dangers.js'

const index = buildMatchIndex(await wholeGuide())

describe('dangers in unusual words', () => {
  it.each([...MISSED_ONCE, ...UNUSUAL])('are heard: %s', (words, anyOf) => {
    const { redFlags } = matchLine(index, words)
    expect(redFlags.some((id) => anyOf.includes(id)), `raised ${redFlags.join(', ') || 'nothing'}`).toBe(true)
  })

  it.each([...ALARMED_ONCE, ...SAME_NOUNS])('are not heard in calm words: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })

  it.each(ONLY_CAUTION)('give a caution and no emergency where nothing has happened: %s', (words) => {
    const { redFlags, cautions } = matchLine(index, words)
    expect(redFlags).toEqual([])
    expect(cautions).not.toEqual([])
  })
})
