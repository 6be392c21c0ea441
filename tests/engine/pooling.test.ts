import { describe, expect, it } from 'vitest'
import { fitPooling, logEvidence } from '../../src/engine/pooling.js'

const even = Float64Array.from([0.5, 0.5])

describe('how far profiles are pooled', () => {
  it('reckons the evidence as draws from an urn', () => {
    // Laplace's rule of succession, weight 2 around even odds: two yes in a row 1/2 × 2/3, then a no 1/4 (worked by hand).
    expect(Math.exp(logEvidence(Float64Array.from([2, 0]), even, 2))).toBeCloseTo(1 / 3, 12)
    expect(Math.exp(logEvidence(Float64Array.from([2, 1]), even, 2))).toBeCloseTo(1 / 12, 12)
    // Two problems are two urns.
    expect(Math.exp(logEvidence(Float64Array.from([2, 0, 2, 1]), even, 2))).toBeCloseTo(1 / 36, 12)
  })

  it('pools little where problems differ', () => {
    expect(fitPooling(Float64Array.from([20, 0, 0, 20, 20, 0]), even)).toBe(0.25)
  })

  it('pools much where differences look like chance', () => {
    expect(fitPooling(Float64Array.from([11, 9, 10, 10, 9, 11]), even)).toBe(32)
  })

  it('takes a problem without records for nothing', () => {
    const counts = Float64Array.from([14, 6, 9, 11])
    expect(logEvidence(Float64Array.from([...counts, 0, 0]), even, 4)).toBe(logEvidence(counts, even, 4))
  })
})
