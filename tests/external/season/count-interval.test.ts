import { describe, expect, it } from 'vitest'
import { countInterval } from '../../../src/season/index.js'

/**
 * Exact 95 % limits of the mean of a Poisson count: Garwood F. (1936), Fiducial limits for the Poisson distribution,
 * Biometrika 28:437-442, as reprinted in tables of vital statistics (values from memory, to the figures given).
 */
const limits95: readonly (readonly [count: number, low: number, high: number])[] = [
  [0, 0, 3.689], [1, 0.0253, 5.572], [2, 0.2422, 7.225], [3, 0.6187, 8.767], [4, 1.09, 10.242], [5, 1.623, 11.668],
  [6, 2.202, 13.059], [7, 2.814, 14.423], [8, 3.454, 15.763], [9, 4.115, 17.085], [10, 4.795, 18.39],
  [15, 8.395, 24.74], [20, 12.217, 30.888], [30, 20.241, 42.827], [50, 37.111, 65.918], [100, 81.364, 121.627],
]

describe('the interval of a small count against Garwood’s table', () => {
  it.each(limits95)('of %d reports lies between %d and %d', (count, low, high) => {
    const interval = countInterval(count)
    expect(interval.low).toBeCloseTo(low, 2)
    expect(interval.high).toBeCloseTo(high, 2)
  })

  // 'The rule of three': of none seen, the one-sided 95 % limit is −ln 0.05 = 2.996 (Hanley & Lippman-Hand 1983, JAMA 249:1743).
  it('ends at −ln 0.05 for none seen, two sides of five in a hundred each', () => {
    expect(countInterval(0, 0.9).high).toBeCloseTo(2.9957, 4)
  })
})
