import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DegreeDayMethod } from '../../../src/guide/index.js'
import { degreeDays, fahrenheitDaysOf } from '../../../src/season/index.js'

const METHODS: readonly DegreeDayMethod[] = ['average', 'modified average', 'single sine', 'single triangle']
const method = fc.constantFrom(...METHODS)
const degrees = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true })
const day = fc.tuple(degrees(-30, 45), degrees(0, 25)).map(([min, range]) => ({ min, max: min + range }))
const thresholds = fc.tuple(degrees(0, 15), fc.option(degrees(1, 25))).map(([lower, above]) => ({ lower, upper: above === null ? null : lower + above }))
const NEAR = 1e-9

describe('degree days of a day', () => {
  it('are never negative, and no more than the highest temperature reaches above the base', () => {
    fc.assert(fc.property(method, day, thresholds, (how, { min, max }, limits) => {
      const found = degreeDays(how, min, max, limits)
      expect(found).toBeGreaterThanOrEqual(0)
      expect(found).toBeLessThanOrEqual(Math.max(0, max - limits.lower) + NEAR)
    }))
  })

  it('are never fewer when the day is warmer, at its coldest or at its warmest', () => {
    fc.assert(fc.property(method, day, thresholds, degrees(0, 10), (how, { min, max }, limits, more) => {
      const found = degreeDays(how, min, max, limits)
      expect(degreeDays(how, min, max + more, limits)).toBeGreaterThanOrEqual(found - NEAR)
      expect(degreeDays(how, Math.min(min + more, max), max, limits)).toBeGreaterThanOrEqual(found - NEAR)
    }))
  })

  it('are the same by every method while no threshold is crossed', () => {
    fc.assert(fc.property(degrees(10, 20), degrees(0, 10), (min, range) => {
      for (const how of METHODS) expect(degreeDays(how, min, min + range, { lower: 10, upper: 30 })).toBeCloseTo(min + range / 2 - 10, 9)
    }))
  })

  it('are 1.8 times as many in degrees Fahrenheit', () => {
    const fahrenheit = (celsius: number): number => celsius * 1.8 + 32
    fc.assert(fc.property(method, day, thresholds, (how, { min, max }, { lower, upper }) => {
      const celsius = degreeDays(how, min, max, { lower, upper })
      const other = degreeDays(how, fahrenheit(min), fahrenheit(max), { lower: fahrenheit(lower), upper: upper === null ? null : fahrenheit(upper) })
      expect(fahrenheitDaysOf(celsius)).toBeCloseTo(other, 6)
    }))
  })

  it('do not go on growing above the upper threshold, but for the plain average, which knows none', () => {
    for (const how of METHODS) {
      const hot = degreeDays(how, 31, 40, { lower: 10, upper: 30 })
      expect(hot).toBe(how === 'average' ? 25.5 : 20)
    }
  })

  it.each([[20, 10], [NaN, 10], [10, NaN]])('refuse temperatures that are none: %s and %s', (min, max) => {
    expect(() => degreeDays('average', min, max, { lower: 10, upper: null })).toThrow('Expected two numbers, the lowest first.')
  })
})
