import { describe, expect, it } from 'vitest'
import { hearingOf } from '../../src/web/case/hearing.js'

const host = { host: 'rose', name: 'Rose', score: 1, words: [] }
const entry = { host: 'rose', hostName: 'Rose', node: 'spots', phrase: 'black spots', score: 0.5, words: [] }

describe('how the asker’s words are met', () => {
  it('sets the best guess apart when it is more often right than wrong', () => {
    expect(hearingOf({ hosts: [host], entries: [entry], confidence: 0.5, outOfScope: false })).toBe('sure')
  })

  it('offers the best few alike when it is more often wrong', () => {
    expect(hearingOf({ hosts: [host], entries: [entry], confidence: 0.49, outOfScope: false })).toBe('unsure')
  })

  it('takes a plant that was plainly named as heard where no trouble was told', () => {
    expect(hearingOf({ hosts: [host], entries: [], confidence: 0, outOfScope: false })).toBe('sure')
    expect(hearingOf({ hosts: [{ ...host, score: 0.6 }], entries: [], confidence: 0, outOfScope: false })).toBe('unsure')
  })

  it('asks for the plant when none was heard and the rest is a guess', () => {
    expect(hearingOf({ hosts: [], entries: [entry], confidence: 0.2, outOfScope: false })).toBe('no plant')
    expect(hearingOf({ hosts: [], entries: [], confidence: 0, outOfScope: false })).toBe('no plant')
  })

  it('says what can be asked when the words are about something else, however sure the match', () => {
    expect(hearingOf({ hosts: [host], entries: [entry], confidence: 0.9, outOfScope: true })).toBe('out of scope')
  })
})
