import { describe, expect, it } from 'vitest'
import { surenessOf } from '../../src/desk/views/sureness.js'
import { en } from '../../src/desk/wording/en.js'
import { es } from '../../src/desk/wording/es.js'

describe('words for a probability', () => {
  // EFSA Scientific Committee (2018), Guidance on uncertainty analysis in scientific assessments, EFSA Journal
  // 16(1):5123, approximate probability scale: term and range in per cent.
  it.each([
    ['almost certain', 99, 100], ['extremely likely', 95, 99], ['very likely', 90, 95], ['likely', 66, 90],
    ['about as likely as not', 33, 66], ['unlikely', 10, 33], ['very unlikely', 5, 10], ['extremely unlikely', 1, 5],
    ['almost impossible', 0, 1],
  ])('says "%s" from %d to %d per cent', (term, from, to) => {
    expect(surenessOf(from / 100, en)).toBe(term)
    expect(surenessOf((from + to) / 200, en)).toBe(term)
    expect(surenessOf(to / 100 - 1e-9, en)).toBe(term)
  })

  it('has a term of its own for each step in Spanish', () => {
    const terms = [0.995, 0.96, 0.92, 0.7, 0.5, 0.2, 0.07, 0.02, 0].map((share) => surenessOf(share, es))
    expect(new Set(terms).size).toBe(9)
    expect(terms[0]).toBe('casi seguro')
    expect(terms[4]).toBe('tan probable como que no')
  })

  it('refuses what is no probability', () => {
    expect(() => surenessOf(-0.1, en)).toThrow('A probability is between 0 and 1, not -0.1.')
    expect(() => surenessOf(Number.NaN, en)).toThrow(/not NaN/)
  })
})
