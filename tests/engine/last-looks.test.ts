import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Evidence, type Reading, readCase, withFinding } from '../../src/engine/index.js'
import { walkTree } from '../../src/engine/tree-walk.js'
import { CANT_LOOK, type Guide, NOT_SURE } from '../../src/guide/index.js'
import { wholeGuide } from '../whole-guide.js'

const SETTING = { on: '2026-06-15', district: null }

let guide: Guide
beforeAll(async () => { guide = await wholeGuide() })

function fromTheTop(host: string): Evidence {
  return { redFlags: [], carriedOn: true, start: { host: host as never, node: null }, findings: [] }
}

function withAnswer(evidence: Evidence, { step }: Reading, answer: string): Evidence {
  if (step.kind !== 'ask') throw new Error(`The case does not ask; its step is ${step.kind}.`)
  return { ...evidence, findings: withFinding(evidence.findings, { check: step.check, answer, from: 'asked' }) }
}

/** Answers of a case from the top of a host's tree, for as long as the tree asks. */
function asTheTreeAsks(host: string, seen: Record<string, string>): Evidence {
  let evidence = fromTheTop(host)
  for (;;) {
    const reading = readCase(guide, evidence, SETTING)
    if (reading.step.kind !== 'ask' || reading.step.by !== 'tree') return evidence
    evidence = withAnswer(evidence, reading, seen[reading.step.check] ?? NOT_SURE)
  }
}

/** Rose leaves with round spots, pale in the middle: the tree hands over, and black spot and rust stay likely. */
function paleSpots(): Evidence {
  return asTheTreeAsks('rose', { 'plant-part': 'leaves', 'leaf-change': 'spots or blotches', 'rose-spot-look': 'round, with a pale middle and a thin dark edge' })
}

const NO_NAME_AND_NO_HOLES = { 'plant-kind': 'a garden flower', 'which-flower': 'another one or I cannot tell', 'plant-part': 'leaves', 'leaf-change': 'holes or chewed edges', 'leaf-holes': 'no holes', 'leaf-underside': 'small insects or eggs' }

describe('engine: the last looks before a specialist has the case', () => {
  it('are asked where the tree hands over and the likelier cause is still open', () => {
    const { step } = readCase(guide, paleSpots(), SETTING)
    expect(step).toMatchObject({ kind: 'ask', by: 'last look' })
  })

  it('end with the first that cannot be seen', () => {
    const evidence = paleSpots()
    for (const answer of [NOT_SURE, CANT_LOOK]) {
      const { step } = readCase(guide, withAnswer(evidence, readCase(guide, evidence, SETTING), answer), SETTING)
      expect(step.kind).toBe('hand-over')
    }
  })

  it('wait until more than one thing is known', () => {
    const hips = withAnswer(fromTheTop('rose'), readCase(guide, fromTheTop('rose'), SETTING), 'fruit')
    expect(readCase(guide, hips, SETTING).step.kind).toBe('hand-over')
  })

  it('are asked of a plant without a name too: what sits on it helps whoever reads the case', () => {
    const { step } = readCase(guide, asTheTreeAsks('unknown-plant', NO_NAME_AND_NO_HOLES), SETTING)
    expect(step).toMatchObject({ kind: 'ask', by: 'last look' })
  })

  it('are asked no more once the answers speak for something that is not listed', () => {
    let evidence = asTheTreeAsks('unknown-plant', NO_NAME_AND_NO_HOLES)
    // Beetles, and tufts that no beetle makes: each alone leaves a look worth asking.
    for (const [check, answer] of [['insects-seen', 'beetles'], ['leaf-coating', 'white cotton-like tufts']] as const) {
      const reading = readCase(guide, evidence, SETTING)
      expect(reading.step).toMatchObject({ kind: 'ask', check })
      evidence = withAnswer(evidence, reading, answer)
    }
    const { step, differential } = readCase(guide, evidence, SETTING)
    expect(step.kind).toBe('hand-over')
    // The odds of it, a third at first, are more than eight times that.
    expect(differential.find(({ problem }) => problem === null)?.probability).toBeGreaterThan(8 / 11)
  })

  it('are easy, at most three, never where something grave is likely, and never change that the tree hands over, nor its words', () => {
    const choices = fc.record({ host: fc.nat(), answers: fc.array(fc.nat(), { minLength: 20, maxLength: 20 }) })
    let met = 0
    fc.assert(fc.property(choices, ({ host, answers }) => {
      let evidence = fromTheTop(guide.hosts[host % guide.hosts.length]?.id ?? '')
      let because: string | null = null
      let looks = 0
      for (const turn of answers) {
        const reading = readCase(guide, evidence, SETTING)
        const { step } = reading
        if (because !== null && step.kind !== 'ask') {
          expect(step).toMatchObject({ kind: 'hand-over', because })
          return
        }
        if (step.kind !== 'ask') return
        const check = guide.checks[guide.checkNumbers.get(step.check) ?? -1]
        if (step.by === 'last look') {
          const stand = walkTree(guide, evidence)?.stand
          because ??= stand?.kind === 'hand over' ? stand.because : null
          looks += 1
          met += 1
          expect(['glance', 'hand lens']).toContain(check?.effort)
          const grave = reading.differential.filter(({ problem }) => ['regulated', 'dangerous'].includes(guide.problems[guide.problemNumbers.get(problem as never) ?? -1]?.cost ?? ''))
          expect(grave.every(({ probability }) => probability < 0.1)).toBe(true)
        } else expect(because).toBeNull()
        expect(looks).toBeLessThanOrEqual(3)
        evidence = withAnswer(evidence, reading, check?.answers[turn % check.answers.length]?.label ?? NOT_SURE)
      }
    }), { numRuns: 400 })
    expect(met).toBeGreaterThan(20)
  })
})
