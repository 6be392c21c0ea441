import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { BESIDE_MENDED, CALM_BESIDE_MENDED, CALM_IN_PASSING, WORRIED } from './worried-voices.js'

const index = buildMatchIndex(await wholeGuide())

describe('dangers in the plain words of worried people', () => {
  it.each([...WORRIED, ...BESIDE_MENDED])('are heard: %s', (words, anyOf) => {
    const { redFlags } = matchLine(index, words)
    expect(redFlags.some((id) => anyOf.includes(id)), `raised ${redFlags.join(', ') || 'nothing'}`).toBe(true)
  })

  it.each([...CALM_IN_PASSING, ...CALM_BESIDE_MENDED])('are not heard in calm words: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })
})
