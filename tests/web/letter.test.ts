import { describe, expect, it } from 'vitest'
import { blankLetter, isAtOdds, letterBroughtBack, letterFollows, letterOfAdvice } from '../../src/web/bench/letter.js'

const RUST = 'Pick the leaves off.'
const BLIGHT = 'Do not carry any part away.'
const withRust = letterFollows(blankLetter, 'rust', RUST)

describe('the letter to the asker, when another problem is chosen', () => {
  it('begins with the guide’s advice for the first one', () => {
    expect(withRust).toEqual({ text: RUST, putIn: RUST, suits: 'rust', replaced: '' })
    expect(isAtOdds(withRust, 'rust')).toBe(false)
  })

  it('follows, where the advice stands in it untouched', () => {
    const next = letterFollows(withRust, 'blight', BLIGHT)
    expect(next.text).toBe(BLIGHT)
    expect(isAtOdds(next, 'blight')).toBe(false)
  })

  it('follows inside a greeting and a farewell, which stay', () => {
    const greeted = { ...withRust, text: `Dear asker,\n\n${RUST}\n\nKind wishes` }
    expect(letterFollows(greeted, 'blight', BLIGHT).text).toBe(`Dear asker,\n\n${BLIGHT}\n\nKind wishes`)
  })

  it('loses the advice where the end has none', () => {
    const next = letterFollows({ ...withRust, text: `Dear asker,\n\n${RUST}` }, 'not known', '')
    expect(next.text).toBe('Dear asker,')
    expect(isAtOdds(next, 'not known')).toBe(false)
  })

  it('is asked about where a hand has changed it, until somebody decides, and keeps every word meanwhile', () => {
    const changed = { ...withRust, text: 'Pick the worst leaves off.' }
    const next = letterFollows(changed, 'blight', BLIGHT)
    expect(next.text).toBe('Pick the worst leaves off.')
    expect(isAtOdds(next, 'blight')).toBe(true)
    expect(isAtOdds({ ...next, suits: 'blight' }, 'blight')).toBe(false)
  })

  it('is at odds no more when the first problem is chosen again', () => {
    const changed = letterFollows({ ...withRust, text: 'By hand.' }, 'blight', BLIGHT)
    expect(isAtOdds(letterFollows(changed, 'rust', RUST), 'rust')).toBe(false)
  })

  it('takes a text written before any problem was chosen as written for the first', () => {
    const byHand = letterFollows({ ...blankLetter, text: 'By hand.' }, 'rust', RUST)
    expect(byHand.text).toBe('By hand.')
    expect(isAtOdds(byHand, 'rust')).toBe(false)
    expect(isAtOdds(letterFollows(byHand, 'blight', BLIGHT), 'blight')).toBe(true)
  })

  it('can be brought back after advice took its place', () => {
    const replaced = letterOfAdvice({ ...withRust, text: 'By hand.' }, 'blight', BLIGHT)
    expect(replaced).toEqual({ text: BLIGHT, putIn: BLIGHT, suits: 'blight', replaced: 'By hand.' })
    expect(letterBroughtBack(replaced, 'blight').text).toBe('By hand.')
    expect(letterBroughtBack({ ...replaced, text: `${BLIGHT} Soon.` }, 'blight').replaced).toBe(`${BLIGHT} Soon.`)
    // Untouched advice is no loss and does not push out what was written by hand.
    expect(letterOfAdvice(replaced, 'rust', RUST).replaced).toBe('By hand.')
  })

  it('takes advice with a dollar sign as it is', () => {
    expect(letterFollows(withRust, 'cost', 'It costs $& and $1.').text).toBe('It costs $& and $1.')
  })
})
