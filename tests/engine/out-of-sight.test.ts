import { beforeAll, describe, expect, it } from 'vitest'
import { type Evidence, readCase, withFinding } from '../../src/engine/index.js'
import { CANT_LOOK, type Guide, type HostId, NOT_SURE } from '../../src/guide/index.js'
import { wholeGuide } from '../whole-guide.js'

const ON = { on: '2026-06-15', district: null }

describe('an asker who can see nothing', () => {
  let guide: Guide
  beforeAll(async () => { guide = await wholeGuide() })

  /** Answers every check by `answer` and gives how many were asked and how it ended. */
  function walk(host: HostId, answer: (turn: number) => string) {
    let evidence: Evidence = { redFlags: [], carriedOn: true, start: { host, node: null }, findings: [] }
    let reading = readCase(guide, evidence, ON)
    let asked = 0
    while (reading.step.kind === 'ask') {
      evidence = { ...evidence, findings: withFinding(evidence.findings, { check: reading.step.check, answer: answer(asked), from: 'asked' }) }
      asked += 1
      reading = readCase(guide, evidence, ON)
    }
    return { asked, step: reading.step, evidence }
  }

  it('is handed over after four checks or little more, on every plant', () => {
    for (const host of guide.hosts) {
      const { asked, step } = walk(host.id, () => NOT_SURE)
      expect([host.id, step.kind]).toEqual([host.id, 'hand-over'])
      expect(asked, host.id).toBeLessThanOrEqual(5)
    }
  })

  it('is told kindly, with what a specialist would like to see', () => {
    const { asked, step } = walk('maple' as HostId, (turn) => (turn % 2 === 0 ? NOT_SURE : CANT_LOOK))
    expect(asked).toBe(4)
    expect(step).toMatchObject({ kind: 'hand-over', because: expect.stringContaining('quite all right') })
    expect(step.kind === 'hand-over' ? step.unsettled.length : 0).toBeGreaterThan(0)
  })

  it('is asked on when something could be seen in between, whatever came first', () => {
    const { asked, evidence } = walk('maple' as HostId, (turn) => (turn === 1 ? 'limp, brown or dry' : NOT_SURE))
    expect(asked).toBeGreaterThan(5)
    const turned = { ...evidence, findings: [...evidence.findings].reverse() }
    expect(readCase(guide, turned, ON)).toEqual(readCase(guide, evidence, ON))
  })
})
