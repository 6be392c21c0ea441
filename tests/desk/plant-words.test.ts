import { describe, expect, it } from 'vitest'
import { plantGuesses, plantWords } from '../../src/desk/views/plant-words.js'
import type { HostId } from '../../src/guide/index.js'
import { lettuceGuide, ROSE } from '../guide/lettuce-world.js'
import { shippedGuide } from './desk-world.js'

const shipped = await shippedGuide()
const guide = lettuceGuide({ 'hosts/rose.yaml': ROSE })
const heard = (...hosts: string[]) => ({ matched: { hosts: hosts.map((host) => ({ host, score: 1, words: [] })), entries: [], confidence: 1, outOfScope: false } })

describe('the plant of a case in a list', () => {
  it('is the settled one', () => {
    expect(plantWords(guide, heard('rose'), { host: 'lettuce' as HostId })).toBe('Lettuce')
  })

  it('is what was heard, marked as a guess, while nobody has settled it', () => {
    expect(plantWords(guide, heard('rose'), { host: null })).toBe('Perhaps rose')
    expect(plantWords(guide, heard('rose', 'lettuce', 'rose'), { host: null })).toBe('Perhaps rose or lettuce')
  })

  it('is guessed from a complaint too, behind the plants that were named, where it was plainly heard', () => {
    const complaint = (confidence: number, ...hosts: string[]) => ({ matched: {
      ...heard(...hosts).matched, confidence, entries: [{ host: 'rose', node: 'start', score: 1, phrase: '', words: [] }],
    } })
    expect(plantGuesses(guide, complaint(0.5))).toEqual(['Rose'])
    expect(plantGuesses(guide, complaint(0.5, 'lettuce'))).toEqual(['Lettuce', 'Rose'])
    expect(plantGuesses(guide, complaint(0.49, 'lettuce'))).toEqual(['Lettuce'])
    expect(plantWords(guide, complaint(0.5), { host: null })).toBe('Perhaps rose')
  })

  it('is not made up where none was heard, or only some plant or other, or the guide has it no more', () => {
    expect(plantWords(shipped, heard('unknown-plant'), { host: null })).toBeNull()
    expect(plantWords(guide, heard(), { host: null })).toBeNull()
    expect(plantWords(guide, heard('a-plant-that-was'), { host: null })).toBeNull()
  })
})
