import { beforeAll, describe, expect, it } from 'vitest'
import { type Evidence, readCase, seededRandom, withFinding } from '../../src/engine/index.js'
import { CANT_LOOK, type Guide, loadGuide, NOT_SURE } from '../../src/guide/index.js'

const ON = { on: '2026-06-15', district: 'eastmere' }

describe('every tree of the demonstration guide', () => {
  let guide: Guide

  beforeAll(async () => {
    const { guide: compiled, errors, warnings } = await loadGuide('trees', '2026-11-25')
    expect(errors).toEqual([])
    expect(warnings).toEqual([])
    if (compiled === null) throw new Error('The guide does not compile. Run frondline proof.')
    guide = compiled
  })

  it('ends every case within twelve checks, from the top and from every entry, whatever is answered', () => {
    const random = seededRandom(2026)
    for (const host of guide.hosts) {
      for (const node of [null, ...host.nodes.filter(({ entry }) => entry.length > 0).map(({ name }) => name)]) {
        for (let turn = 0; turn < 15; turn++) {
          let evidence: Evidence = { redFlags: [], carriedOn: true, start: { host: host.id, node }, findings: [] }
          let asked = 0
          for (let reading = readCase(guide, evidence, ON); reading.step.kind === 'ask'; reading = readCase(guide, evidence, ON)) {
            const { check: id } = reading.step
            const labels = [...guide.checks[guide.checkNumbers.get(id) ?? -1]?.answers.map(({ label }) => label) ?? [], NOT_SURE, CANT_LOOK]
            evidence = { ...evidence, findings: withFinding(evidence.findings, { check: id, answer: labels[Math.floor(random() * labels.length)] ?? NOT_SURE, from: 'asked' }) }
            asked += 1
            if (asked > 12) throw new Error(`${host.id} from ${node ?? 'the top'} asks more than twelve checks: ${evidence.findings.map(({ check, answer }) => `${check}: ${answer}`).join('; ')}`)
          }
        }
      }
    }
  }, 240_000)

  it('hands over when nothing can be seen, rather than guess', () => {
    for (const host of guide.hosts) {
      let evidence: Evidence = { redFlags: [], carriedOn: true, start: { host: host.id, node: null }, findings: [] }
      let reading = readCase(guide, evidence, ON)
      while (reading.step.kind === 'ask') {
        evidence = { ...evidence, findings: withFinding(evidence.findings, { check: reading.step.check, answer: NOT_SURE, from: 'asked' }) }
        reading = readCase(guide, evidence, ON)
      }
      expect([host.id, reading.step.kind]).toEqual([host.id, 'hand-over'])
    }
  })

  it('has a source or common practice, advice and a review for every problem, and never calls a plant safe to eat', () => {
    for (const problem of guide.problems) {
      const text = [problem.advice.bottomLine, ...problem.advice.doNow, ...problem.advice.nextYear, ...problem.advice.notWorthDoing, problem.advice.spray, ...problem.cautions].join(' ')
      expect(problem.advice.doNow.length, problem.id).toBeGreaterThan(0)
      // A garden job is chosen, not told by signs.
      if (problem.kind !== 'garden job') expect(problem.signs.length, problem.id).toBeGreaterThanOrEqual(3)
      expect(/safe to eat|safely eat|can be eaten safely/i.test(text), problem.id).toBe(false)
      expect(/555-|\b\d{3}[- ]\d{3,4}[- ]\d{4}\b/.test(text), `${problem.id} holds a telephone number`).toBe(false)
      // A text that advises against spraying needs no label.
      if (!/^(none|no spray|not worth)\b/i.test(problem.advice.spray)) expect(/label/i.test(problem.advice.spray), `${problem.id}: the spray text does not defer to the label`).toBe(true)
    }
  })

  it('hears each complaint by six phrases or more, for people say the same thing in many ways', () => {
    const few = guide.hosts.flatMap(({ id, nodes }) => nodes.filter(({ entry }) => entry.length > 0 && entry.length < 6).map(({ name, entry }) => `${id}/${name}: ${entry.length}`))
    expect(few).toEqual([])
  })
})
