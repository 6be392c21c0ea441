import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countInterval } from '../../../src/season/index.js'

/** P(X <= k) of a Poisson count, summed term by term: another way than the one under test. */
function poissonAtMost(k: number, mean: number): number {
  let term = Math.exp(-mean)
  let sum = term
  for (let i = 1; i <= k; i++) sum += term *= mean / i
  return sum
}

describe('the interval of a count', () => {
  it('leaves two and a half in a hundred on each side, summed up by the Poisson distribution itself', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 200 }), (count) => {
      const { low, high } = countInterval(count)
      expect(1 - poissonAtMost(count - 1, low)).toBeCloseTo(0.025, 8)
      expect(poissonAtMost(count, high)).toBeCloseTo(0.025, 8)
    }))
  })

  it('holds the count, and moves up with it, whole or not', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 300, noNaN: true }), fc.double({ min: 0.01, max: 5, noNaN: true }), (count, more) => {
      const [one, other] = [countInterval(count), countInterval(count + more)]
      expect(one.low).toBeLessThanOrEqual(count)
      expect(one.high).toBeGreaterThan(count)
      expect(other.low).toBeGreaterThanOrEqual(one.low)
      expect(other.high).toBeGreaterThan(one.high)
    }))
  })

  it('is refused for what is no count and no confidence', () => {
    expect(() => countInterval(-1)).toThrow('0 or more')
    expect(() => countInterval(Number.NaN)).toThrow('0 or more')
    expect(() => countInterval(3, 1)).toThrow('between 0 and 1')
  })
})
