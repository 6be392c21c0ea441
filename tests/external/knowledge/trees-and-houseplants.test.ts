import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { writtenProblems, type WrittenProblem } from './written-problems.js'

const problems = await writtenProblems()

const written = (id: string): WrittenProblem => {
  const problem = problems.get(id)
  if (problem === undefined) throw new Error(`No problem is called ${id}. Expected a file of that name in trees/problems.`)
  return problem
}

describe('wood-boring beetles that must be reported', () => {
  // Preferred hosts in North America are maple, horse chestnut, birch, willow and elm:
  // A. Sawyer, Asian Longhorned Beetle: Annotated Host List, USDA APHIS, revised 2008 (read).
  it.each(['maple', 'horse-chestnut', 'birch', 'willow', 'elm'])('the Asian longhorn beetle is told of on %s', (host) => {
    expect(Object.keys(written('longhorn-beetle').hosts)).toContain(host)
  })

  // The emerald ash borer lives on ash; D-shaped holes of 3 to 4 mm (common handbook value; from memory).
  it('the emerald ash borer is told of on ash alone, with its D-shaped holes', () => {
    expect(Object.keys(written('emerald-ash-borer').hosts)).toEqual(['ash'])
    expect(written('emerald-ash-borer').text).toMatch(/D-shaped holes, 3 to 4 mm wide/)
  })

  it.each(['longhorn-beetle', 'emerald-ash-borer', 'insect-longhorn-beetle-watch'])('%s is passed on to the plant health office and no wood is moved', (id) => {
    expect(written(id).cost).toBe('regulated')
    expect(written(id).watch?.escalate).toMatch(/plant health office/)
    expect(written(id).watch?.escalate).toMatch(/[Dd]o not move any wood/)
  })
})

describe('maples near horses', () => {
  // Seeds of sycamore and box elder hold hypoglycin A, which kills horses: Unger L. et al. 2014, Journal of Veterinary
  // Internal Medicine 28(4):1289-1293 (abstract read).
  it('whoever asks about maple seeds is told to keep horses from those of sycamore and box elder', async () => {
    const maple = await readFile(join(import.meta.dirname, '../../../trees/hosts/maple.yaml'), 'utf8')
    expect(maple).toMatch(/Keep horses away from seeds and seedlings of sycamore and box elder/)
  })
})

describe('the winter rest of a desert cactus', () => {
  // Near 10 °C and nearly dry (project's check values). °F = 1.8 × °C + 32, exactly (from memory).
  it('lies round 10 °C, is nearly dry, and is the same in °F', () => {
    const range = /about (\d+) to (\d+) °C \((\d+) to (\d+) °F\), and almost dry/.exec(written('cactus-no-flowers').text)
    const [low, high, lowF, highF] = (range ?? []).slice(1).map(Number)
    expect(low).toBeLessThanOrEqual(10)
    expect(high).toBeGreaterThanOrEqual(10)
    expect([lowF, highF]).toEqual([low, high].map((celsius) => Math.round(1.8 * (celsius ?? NaN) + 32)))
  })
})
