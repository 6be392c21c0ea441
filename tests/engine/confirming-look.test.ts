import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { bars, readCase } from '../../src/engine/index.js'
import { KEPT_SHARE, NEEDS_NO_CONFIRMING } from '../../src/engine/bars.js'
import { walkTree } from '../../src/engine/tree-walk.js'
import { CANT_LOOK, type Guide, NOT_SURE } from '../../src/guide/index.js'
import { all, lettuceGuide, swap } from '../guide/lettuce-world.js'
import { wholeGuide } from '../whole-guide.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

/** Brown edges are the tree's last question; white fuzz underneath would still speak for downy mildew. */
function browning(effort: string, sure = false): Guide {
  return lettuceGuide({
    ...(effort === 'glance' ? {} : { 'checks/leaf-underside.yaml': swap('effort: glance', `effort: ${effort}`) }),
    'problems/downy-mildew.yaml': swap('pale patches: almost always', `pale patches: sometimes, brown edges: ${sure ? 'rarely' : 'as often as not'}`),
    'problems/tipburn.yaml': all(swap('nothing: almost always', 'nothing: always'), swap('lettuce: common', 'lettuce: very common')),
  })
}
const brown: readonly (readonly [string, string])[] = [['leaf-top', 'brown edges']]
const stepAfter = (guide: Guide, ...more: readonly (readonly [string, string])[]) => readCase(guide, lettuceCase([...brown, ...more]), MAY_DAY).step

describe('engine: the look that confirms a conclusion', () => {
  it('is asked where an easy look could well unseat what the tree ends in', () => {
    expect(stepAfter(browning('glance'))).toEqual({ kind: 'ask', check: 'leaf-underside', by: 'gain' })
  })

  it('confirms, or lets the other problem lead', () => {
    expect(stepAfter(browning('glance'), ['leaf-underside', 'nothing'])).toEqual({ kind: 'conclude', problem: 'tipburn' })
    expect(stepAfter(browning('glance'), ['leaf-underside', 'white fuzz'])).not.toEqual({ kind: 'conclude', problem: 'tipburn' })
  })

  it('is not asked twice of somebody who could not see it', () => {
    for (const answer of [NOT_SURE, CANT_LOOK]) {
      expect(stepAfter(browning('glance'), ['leaf-underside', answer])).toEqual({ kind: 'conclude', problem: 'tipburn' })
    }
  })

  it('is left out where it takes more than a moment, and where no answer would change anything', () => {
    expect(stepAfter(browning('dig'))).toEqual({ kind: 'conclude', problem: 'tipburn' })
    expect(stepAfter(browning('glance', true))).toEqual({ kind: 'conclude', problem: 'tipburn' })
  })
})

describe('engine: a conclusion after an untypical look', () => {
  /** Brown edges are tipburn's; fuzz underneath is seldom seen with it, and brown edges as often with downy mildew as `browned` says. */
  const mixed = (browned: string, cost = 'ordinary'): Guide => lettuceGuide({
    'problems/downy-mildew.yaml': swap('pale patches: almost always', `pale patches: sometimes, brown edges: ${browned}`),
    'problems/tipburn.yaml': all(
      swap('nothing: almost always', 'nothing: usually, white fuzz: seldom'), swap('lettuce: common', 'lettuce: very common'),
      ...(cost === 'ordinary' ? [] : [swap('cost: ordinary', `cost: ${cost}`)]),
    ),
  })

  it('stands while the problem still leads and is likely', () => {
    const guide = mixed('seldom')
    const { step, differential: [first] } = readCase(guide, lettuceCase([...brown, ['leaf-underside', 'white fuzz']]), MAY_DAY)
    expect(step).toEqual({ kind: 'conclude', problem: 'tipburn' })
    expect(first?.probability).toBeGreaterThanOrEqual(KEPT_SHARE)
    expect(first?.probability).toBeLessThan(bars.ordinary)
  })

  it('falls where it is no longer likely, or where being wrong is costly', () => {
    const fuzz = ['leaf-underside', 'white fuzz'] as const
    expect(stepAfter(mixed('sometimes'), fuzz)).not.toMatchObject({ kind: 'conclude' })
    expect(stepAfter(mixed('seldom', 'costly'), fuzz)).not.toMatchObject({ kind: 'conclude' })
  })
})

describe('engine: confirming looks over the whole guide', () => {
  let guide: Guide
  beforeAll(async () => { guide = await wholeGuide() })

  it('are easy, and never asked of what is nearly certain; a conclusion passes the bar of its cost, or stands after a look while still likely', () => {
    const choices = fc.record({ host: fc.nat(), answers: fc.array(fc.nat(), { minLength: 14, maxLength: 14 }) })
    const starts = guide.hosts.map(({ nodes, start }) => guide.checks[nodes[start]?.check ?? -1]?.id)
    let met = 0
    fc.assert(fc.property(choices, ({ host, answers }) => {
      let evidence: Parameters<typeof readCase>[1] = { redFlags: [], carriedOn: true, start: { host: (guide.hosts[host % guide.hosts.length]?.id ?? '') as never, node: null }, findings: [] }
      for (const turn of answers) {
        const { step, differential: [first] } = readCase(guide, evidence, MAY_DAY)
        if (step.kind === 'conclude') {
          const cost = guide.problems[guide.problemNumbers.get(step.problem) ?? -1]?.cost ?? 'dangerous'
          const asked = evidence.findings.length - (walkTree(guide, evidence)?.path.length ?? 0)
          expect(first?.probability).toBeGreaterThanOrEqual((cost === 'ordinary' && asked > 0 ? KEPT_SHARE : bars[cost]) - 1e-9)
        }
        if (step.kind !== 'ask') return
        const check = guide.checks[guide.checkNumbers.get(step.check) ?? -1]
        if (step.by === 'gain' && walkTree(guide, evidence)?.stand.kind === 'problem') {
          met += 1
          const cost = guide.problems[guide.problemNumbers.get(first?.problem as never) ?? -1]?.cost
          // Past its bar it is confirmed; short of it, any check that tells is asked.
          if (cost !== undefined && (first?.probability ?? 0) >= bars[cost]) {
            expect(['glance', 'hand lens']).toContain(check?.effort)
            expect(starts).not.toContain(check?.id) // what sorts complaints is not asked last
            expect(first?.probability).toBeLessThan(NEEDS_NO_CONFIRMING)
          }
        }
        evidence = { ...evidence, findings: [...evidence.findings, { check: step.check, answer: check?.answers[turn % (check.answers.length)]?.label ?? NOT_SURE, from: 'asked' }] }
      }
    }), { numRuns: 400 })
    expect(met).toBeGreaterThan(0)
  })
})
