import { describe, expect, it } from 'vitest'
import { brierScore, calibrationError, logLoss, reliabilityBins } from '../../src/engine/index.js'

describe('calibration', () => {
  it('is without a gap when four of five claims of 80 % are right', () => {
    const bins = reliabilityBins([true, true, true, true, false].map((isRight) => ({ claimed: 0.8, isRight })))
    expect(bins).toEqual([{ from: 0.8, to: 0.9, count: 5, claimed: 0.8, right: 0.8 }])
    expect(calibrationError(bins)).toBeCloseTo(0, 12)
  })

  it('shows a gap when claims of 95 % are right half the time', () => {
    expect(calibrationError(reliabilityBins([true, false].map((isRight) => ({ claimed: 0.95, isRight }))))).toBeCloseTo(0.45, 12)
  })

  it('puts a claim of exactly 1 into the last bin', () => {
    expect(reliabilityBins([{ claimed: 1, isRight: true }])[0]).toMatchObject({ from: 0.95, count: 1 })
  })

  it('scores a forecast by Brier\'s rule', () => {
    // Brier 1950, Monthly Weather Review 78:1-3, in the form Σ (f − E)² over all classes: worked by hand.
    expect(brierScore([0.7, 0.2, 0.1], 0)).toBeCloseTo(0.09 + 0.04 + 0.01, 12)
    expect(brierScore([1, 0], 0)).toBe(0)
    expect(brierScore([1, 0], 1)).toBe(2)
  })

  it('bounds the log loss of a forecast that had ruled the truth out', () => {
    expect(logLoss([0.5, 0.5], 0)).toBeCloseTo(Math.LN2, 12)
    expect(logLoss([1, 0], 1)).toBeCloseTo(Math.log(1e6), 9)
  })
})
