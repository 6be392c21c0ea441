import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCase } from '../../src/engine/index.js'
import { lettuceGuide, swap } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

const guide = lettuceGuide()
const shareOf = (findings: readonly (readonly [string, string])[], problem: string | null): number =>
  readCase(guide, lettuceCase(findings), MAY_DAY).differential.find((one) => one.problem === problem)?.probability ?? 0

describe('the reasons for and against a problem', () => {
  it('speak for it exactly where they raise it above what the other findings make of it', () => {
    const findings = fc.subarray(guide.checks.map(({ id }) => id), { minLength: 1 }).chain((ids) => fc.tuple(...ids.map((id) => (
      fc.constantFrom(...guide.checks[guide.checkNumbers.get(id) ?? -1]?.answers.map(({ label }) => label) ?? []).map((answer) => [id, answer] as const)))))
    fc.assert(fc.property(findings, (some) => {
      for (const { problem, probability, reasons } of readCase(guide, lettuceCase(some), MAY_DAY).differential) {
        expect(reasons.map(({ check }) => check).sort()).toEqual(some.map(([check]) => check).sort())
        for (const { check, weight } of reasons) {
          const without = shareOf(some.filter(([other]) => other !== check), problem)
          expect(Math.sign(Math.round(weight * 1e9))).toBe(Math.sign(Math.round((Math.log(probability / (1 - probability)) - Math.log(without / (1 - without))) * 1e9)))
        }
      }
    }))
  })

  it('weigh a finding by the change of the odds, worked out by hand', () => {
    // Two answers about slime alone: P(yes | slugs) = 0.97 × 0.75 + 0.015; the other rows and the priors give the rest.
    const before = shareOf([], 'slugs')
    const after = shareOf([['slime', 'yes']], 'slugs')
    const [reason] = readCase(guide, lettuceCase([['slime', 'yes']]), MAY_DAY).differential.find(({ problem }) => problem === 'slugs')?.reasons ?? []
    expect(reason?.weight).toBeCloseTo(Math.log(after / (1 - after) / (before / (1 - before))), 10)
    expect(reason?.weight).toBeGreaterThan(1)
  })

  it('do not count twice for what two checks of one sign both see', () => {
    const paired = lettuceGuide({ 'problems/slugs.yaml': swap('advice:', 'same sign: [[leaf-top, slime]]\nadvice:') })
    const weakest = (world: typeof guide): number => {
      const { differential } = readCase(world, lettuceCase([['leaf-top', 'ragged holes'], ['slime', 'yes']]), MAY_DAY)
      return Math.min(...differential.find(({ problem }) => problem === 'slugs')?.reasons.map(({ weight }) => weight) ?? [])
    }
    expect(weakest(guide)).toBeGreaterThan(1)
    expect(weakest(paired)).toBeLessThan(0.1)
  })
})
