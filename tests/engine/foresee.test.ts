import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { checksToCome, type Evidence, modelOfHost, readCase, type Reading, seededRandom, withFinding } from '../../src/engine/index.js'
import { type Guide, NOT_SURE } from '../../src/guide/index.js'
import { wholeGuide } from '../whole-guide.js'
import { lettuceGuide, swap } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

/** The answers that at least one in ten would give now, worked out from the differential; *not sure* always. */
function likelyAnswers(guide: Guide, { step, host: id, differential }: Reading): string[] {
  const check = step.kind === 'ask' ? guide.checks[guide.checkNumbers.get(step.check) ?? -1] : undefined
  const host = guide.hosts.find((one) => one.id === id)
  if (check === undefined || host === undefined) return []
  const model = modelOfHost(guide, host).checks[host.checks.indexOf(check.number)]
  const chance = (answer: number): number => differential.reduce((sum, { problem, probability }) => {
    const row = problem === null ? host.problems.length : host.problems.indexOf(guide.problemNumbers.get(problem) ?? -1)
    return sum + probability * (model?.share[row * check.answers.length + answer] ?? 0)
  }, 0)
  // 0.88 of the checks are answered, so that 0.1 of all is 0.1 / 0.88 of those.
  return [...check.answers.flatMap(({ label }, answer) => (chance(answer) >= 0.1 / 0.88 ? [label] : [])), NOT_SURE]
}

const answered = (evidence: Evidence, reading: Reading, answer: string): Evidence => (
  reading.step.kind === 'ask' ? { ...evidence, findings: withFinding(evidence.findings, { check: reading.step.check, answer, from: 'asked' }) } : evidence)

describe('the checks still to come', () => {
  const small = lettuceGuide()

  it('are nothing to count where nothing is asked', () => {
    const evidence = lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'white fuzz']])
    expect(checksToCome(small, evidence, MAY_DAY)).toBeNull()
  })

  it('are counted over each likely course', () => {
    // From the top: brown edges are all but certain and conclude at once; pale patches or holes ask one more.
    const sure = lettuceGuide({ 'problems/tipburn.yaml': swap('brown edges: almost always', 'brown edges: always') , 'problems/slugs.yaml': swap('ragged holes: almost always', 'ragged holes: always'), 'problems/downy-mildew.yaml': swap('pale patches: almost always', 'pale patches: always') })
    expect(checksToCome(sure, lettuceCase(), MAY_DAY)).toEqual({ least: 1, most: 2 })
    // Brown edges that may be something else are confirmed by one look.
    expect(checksToCome(small, lettuceCase(), MAY_DAY)).toEqual({ least: 2, most: 2 })
  })

  it('are called the last only where every likely answer ends the case', () => {
    const labels = small.checks.flatMap(({ id, answers }) => answers.map(({ label }) => [id, label] as const))
    const cases = fc.record({
      start: fc.constantFrom(null, 'top', 'underside', 'slime'),
      findings: fc.uniqueArray(fc.constantFrom(...labels), { selector: ([id]) => id, maxLength: 2 }),
    })
    let lasts = 0
    fc.assert(fc.property(cases, ({ start, findings }) => {
      const evidence: Evidence = { ...lettuceCase(findings, start), carriedOn: true }
      const reading = readCase(small, evidence, MAY_DAY)
      const left = checksToCome(small, evidence, MAY_DAY)
      if (left === null) return
      expect(left.least).toBeGreaterThanOrEqual(1)
      expect(left.most).toBeGreaterThanOrEqual(left.least)
      const goOn = likelyAnswers(small, reading).filter((answer) => readCase(small, answered(evidence, reading, answer), MAY_DAY).step.kind === 'ask')
      if (left.most === 1) {
        lasts += 1
        expect(goOn).toEqual([])
      } else expect(goOn).not.toEqual([])
    }))
    expect(lasts).toBeGreaterThan(0)
  })

  describe('in the demonstration guide', () => {
    let guide: Guide
    beforeAll(async () => { guide = await wholeGuide() })

    it('never say the last where a likely answer asks on', () => {
      const setting = { on: '2026-06-15', district: null }
      const random = seededRandom(14)
      for (const host of guide.hosts) {
        for (const node of [null, ...host.nodes.filter(({ entry }) => entry.length > 0).map(({ name }) => name)]) {
          let evidence: Evidence = { redFlags: [], carriedOn: true, start: { host: host.id, node }, findings: [] }
          let reading = readCase(guide, evidence, setting)
          while (reading.step.kind === 'ask') {
            const left = checksToCome(guide, evidence, setting)
            const likely = likelyAnswers(guide, reading)
            const goOn = likely.filter((answer) => readCase(guide, answered(evidence, reading, answer), setting).step.kind === 'ask')
            if (left?.most === 1) expect(goOn, `${host.id} from ${node ?? 'the top'}`).toEqual([])
            evidence = answered(evidence, reading, likely[Math.floor(random() * likely.length)] ?? NOT_SURE)
            reading = readCase(guide, evidence, setting)
          }
        }
      }
    }, 60_000)
  })
})
