import { describe, expect, it } from 'vitest'
import { surenessOf } from '../../src/desk/views/sureness.js'

describe('words for a probability', () => {
  // EFSA Scientific Committee (2018), Guidance on uncertainty analysis in scientific assessments, EFSA Journal
  // 16(1):5123, approximate probability scale: term and range in per cent.
  it.each([
    ['almost certain', 99, 100], ['extremely likely', 95, 99], ['very likely', 90, 95], ['likely', 66, 90],
    ['about as likely as not', 33, 66], ['unlikely', 10, 33], ['very unlikely', 5, 10], ['extremely unlikely', 1, 5],
    ['almost impossible', 0, 1],
  ])('says "%s" from %d to %d per cent', (term, from, to) => {
    expect(surenessOf(from / 100)).toBe(term)
    expect(surenessOf((from + to) / 200)).toBe(term)
    expect(surenessOf(to / 100 - 1e-9)).toBe(term)
  })

  it('refuses what is no probability', () => {
    expect(() => surenessOf(-0.1)).toThrow('A probability is between 0 and 1, not -0.1.')
    expect(() => surenessOf(Number.NaN)).toThrow(/not NaN/)
  })
})
