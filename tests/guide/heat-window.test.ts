import { describe, expect, it } from 'vitest'
import { readHeatWindow } from '../../src/guide/heat-window.js'
import { errorsOf, lettuceGuide, swap } from './lettuce-world.js'

const PROBLEM = 'problems/slugs.yaml'
const withLines = (lines: string) => ({ [PROBLEM]: swap('cost: ordinary\n', `${lines}\ncost: ordinary\n`) })

describe('when in the year\'s warmth a problem is seen', () => {
  it('is read with its unit, thresholds, start and method', () => {
    expect(readHeatWindow('450 and 900 degree days base 10 °C from 1 March', 'seen between')).toEqual({
      unit: 'C', least: 450, most: 900, base: 10, upper: null, from: { month: 3, day: 1 }, method: 'average',
    })
    expect(readHeatWindow('425.5  degree-days base 50°F to 88 °F from 1 january by single sine', 'seen after')).toEqual({
      unit: 'F', least: 425.5, most: null, base: 50, upper: 88, from: { month: 1, day: 1 }, method: 'single sine',
    })
  })

  it.each([
    ['450 to 900 degree days', 'Expected words such as: 450 and 900 degree days base 10 °C from 1 March', []],
    ['450 and 900 degree days base 10 °C from 1 Marsh', '"Marsh" is no month.', ['March']],
    ['450 and 900 degree days base 10 °C from 31 April', 'Expected a day from 1 to 30 of April.', []],
    ['450 and 900 degree days base 10 °C from 1 March by single sign', 'is no way to reckon degree days', ['single sine']],
    ['900 and 450 degree days base 10 °C from 1 March', 'Expected the smaller number of degree days first.', []],
    ['450 and 900 degree days base 10 °C to 86 °F from 1 March by single sine', 'Expected both thresholds in the same unit.', []],
    ['450 and 900 degree days base 10 °C to 8 °C from 1 March by single sine', 'Expected the upper threshold above the base.', []],
    ['450 and 900 degree days base 10 °C to 30 °C from 1 March', 'knows no upper threshold', []],
    ['-5 and 900 degree days base 10 °C from 1 March', 'never below 0', []],
  ])('is refused in words that say what is wrong: %s', (text, message, nearest) => {
    expect(readHeatWindow(text, 'seen between')).toEqual({ message: expect.stringContaining(message) as string, nearest })
  })
})

describe('the weather of a problem in the guide', () => {
  it('is compiled, each kind of weather once', () => {
    const guide = lettuceGuide(withLines('favoured by: [wet leaves, soaking rain, wet leaves]\nseen after: 100 degree days base 5 °C from 1 March'))
    expect(guide.problems[guide.problemNumbers.get('slugs') ?? -1]).toMatchObject({ favouredBy: ['soaking rain', 'wet leaves'], heatWindow: { least: 100, most: null } })
    expect(lettuceGuide().problems.every(({ favouredBy, heatWindow }) => favouredBy.length === 0 && heatWindow === null)).toBe(true)
  })

  it('changes what the guide is', () => {
    expect(lettuceGuide(withLines('favoured by: [wet leaves]')).hash).not.toBe(lettuceGuide().hash)
  })

  it('is pointed at where it cannot be read, with the nearest name', () => {
    const at = expect.stringMatching(/^trees\/problems\/slugs\.yaml:\d+:15$/) as string
    expect(errorsOf(withLines('favoured by: [wet leafs]'))).toContainEqual({ code: 'SHAPE', at, nearest: ['wet leaves'] })
    expect(errorsOf(withLines('seen between: 450 and 900 degree days base 10 °C from 1 Marsh'))).toEqual([{ code: 'HEAT_WINDOW', at, nearest: ['March'] }])
    expect(errorsOf(withLines('seen between: 1 and 2 degree days base 10 °C from 1 March\nseen after: 1 degree days base 10 °C from 1 March'))).toMatchObject([{ code: 'HEAT_WINDOW' }])
  })
})
