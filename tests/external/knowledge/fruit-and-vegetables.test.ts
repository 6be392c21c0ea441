import { describe, expect, it } from 'vitest'
import { writtenProblems, type WrittenProblem } from './written-problems.js'

const problems = await writtenProblems()

const written = (id: string): WrittenProblem => {
  const problem = problems.get(id)
  if (problem === undefined) throw new Error(`No problem is called ${id}. Expected a file of that name in trees/problems.`)
  return problem
}

const measured = (digits: string | undefined): number => Number(digits?.replace('−', '-'))

const pairs = (pattern: RegExp): readonly { where: string, found: string, metric: number, other: number }[] =>
  [...problems.values()].flatMap(({ problem, text }) => [...text.matchAll(pattern)].map((match) => ({
    where: problem, found: match[0], metric: measured(match[1]), other: measured(match[2]),
  })))

// 1 inch = 25.4 mm and 1 foot = 12 inches, exactly (International Yard and Pound Agreement, 1959; from memory). Rounded to
// what a hand can measure, a pair may be a fifth off, and half an inch where it is small.
describe('lengths that the advice gives twice', () => {
  it.each([
    ['mm and inches', /(\d+(?:\.\d+)?) mm \((\d+(?:\.\d+)?) inch/g, 25.4, 20],
    ['cm and inches', /(\d+(?:\.\d+)?) cm \((\d+(?:\.\d+)?) inch/g, 2.54, 15],
    ['cm and feet', /(\d+(?:\.\d+)?) cm \((\d+(?:\.\d+)?) f[eo]/g, 30.48, 1],
    ['m and feet', /(\d+(?:\.\d+)?) m \((\d+(?:\.\d+)?) feet/g, 0.3048, 1],
  ])('agree in %s', (_unit, pattern, metricOfOne, atLeast) => {
    const found = pairs(pattern)
    expect(found.length).toBeGreaterThanOrEqual(atLeast)
    const wrong = found.filter(({ metric, other }) => Math.abs(metric - other * metricOfOne) > Math.max(metric * 0.2, metricOfOne / 2))
    expect(wrong).toEqual([])
  })

  // °F = 1.8 × °C + 32, exactly (BIPM, The International System of Units, 9th edition 2019, and definition of the degree Fahrenheit; from memory).
  it('agree in °C and °F, to the degree', () => {
    const found = pairs(/((?:[−-])?\d+) °C \(((?:[−-])?\d+) °F\)/g)
    expect(found.length).toBeGreaterThanOrEqual(10)
    expect(found.filter(({ metric, other }) => Math.abs(1.8 * metric + 32 - other) > 1)).toEqual([])
  })
})

describe('soil for plants that mind its lime', () => {
  // 4.5 to 5.5: https://growingproduce.com/fruits/berries/looking-beyond-soil-ph-in-berries (read).
  it('is pH 4.5 to 5.5 for blueberries, in both places that say so', () => {
    expect(written('blueberry-lime').advice['bottom line']).toMatch(/pH of 4\.5 to 5\.5/)
    expect(written('lime-yellowing').text).toMatch(/Blueberries need 4\.5 to 5\.5/)
  })

  // Held down at pH 7.2 or more (common handbook value; from memory).
  it('is pH 7.2 or a little more against clubroot', () => {
    expect(written('cabbage-clubroot').text).toMatch(/lime to bring the soil to pH 7\.2 or a little more/)
  })
})

// 25 mm (1 inch) a week, rain included, once or twice a week (USDA tip sheet on vegetable gardens, read as reposted).
describe('water in the growing season', () => {
  it('is 25 mm a week wherever a weekly amount is named', () => {
    const amounts = [...problems.values()].flatMap(({ problem, text }) =>
      [...text.matchAll(/(\d+) mm(?: \([^)]*\))?(?: of water)? a week/g)].map((match) => ({ problem, mm: Number(match[1]) })))
    expect(amounts.length).toBeGreaterThanOrEqual(15)
    expect(amounts.filter(({ mm }) => mm !== 25)).toEqual([])
  })
})

/*
 * Late blight, potato wart, potato cyst nematode, plum pox and citrus greening are on published lists of pests to report (examples: EPPO A1
 * and A2 lists; United States National Plant Board, https://nationalplantboard.org/plant-pest-issues/, read; what holds
 * in one place is the region's to say). An answer must then ask for a photo, the place and the date, and move nothing.
 */
describe('what has to be reported', () => {
  it.each(['potato-late-blight', 'tomato-late-blight', 'potato-wart', 'potato-cyst-nematode', 'plum-pox', 'citrus-greening'])('asks for photos, place and date of %s and moves nothing', (id) => {
    const problem = written(id)
    expect(problem.cost).toBe('regulated')
    expect(problem.watch?.escalate).toMatch(/photo/)
    expect(problem.watch?.escalate).toMatch(/place and the date|the place, and the date|place and date/)
    expect(problem.text).toMatch(/[Dd]o not (?:move|carry|dig|take)|[Nn]othing is to be cut or moved|No part of the plants may leave|[Nn]ever move/)
  })

  // Plum pox virus infects Prunus only among these (EPPO Standard PM 7/32, Plum pox potyvirus, 2004: plum, peach, apricot and other Prunus).
  it('names for plum pox only hosts of the genus Prunus, plum and peach among them', () => {
    const hosts = Object.keys(written('plum-pox').hosts)
    expect(hosts).toEqual(expect.arrayContaining(['plum', 'peach']))
    expect(hosts.filter((host) => !['plum', 'peach', 'cherry'].includes(host))).toEqual([])
  })

  // One leaf half unlike the other tells greening from hunger: University of Florida, Citrus Research and Education Center,
  // https://crec.ifas.ufl.edu/hlb-information/greening/symptoms/ (read).
  it('tells citrus greening from hunger by the two halves of a leaf', () => {
    expect(written('citrus-greening').text).toMatch(/citrus-leaf-halves: \{ "blotched, and the two halves differ": almost always/)
    expect(written('citrus-hungry').text).toMatch(/citrus-leaf-halves: \{ "the two halves are alike": almost always/)
    expect(written('citrus-lime-yellowing').text).toMatch(/citrus-leaf-halves: \{ "the two halves are alike": almost always/)
  })
})

// In cool places only the pea-sized figs of autumn ripen in the next year, and the larger ones come off: A. Fowler, The Guardian, 28 October 2017 (read).
describe('figs in a cool place', () => {
  it('keep those of pea size through the winter and lose the larger ones', () => {
    const now = written('fig-unripe').advice['do now'].join(' ')
    expect(now).toMatch(/pick off all green figs that are bigger than a pea/)
    expect(now).toMatch(/Leave the ones at the tips that are pea size or less/)
  })
})
