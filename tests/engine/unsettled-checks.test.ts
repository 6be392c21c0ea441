import { beforeAll, describe, expect, it } from 'vitest'
import { type Evidence, readCase, withFinding } from '../../src/engine/index.js'
import { planCase } from '../../src/engine/read-case.js'
import { unsettledChecks } from '../../src/engine/unsettled-checks.js'
import { CANT_LOOK, type Guide, NOT_SURE } from '../../src/guide/index.js'
import { wholeGuide } from '../whole-guide.js'

let guide: Guide
beforeAll(async () => { guide = await wholeGuide() })

/** The looks named at the hand-over of a hosta with neat notches, where the look after dark is answered so. */
function namedWhereDarkIs(answer: string): readonly string[] {
  const seen: Record<string, string> = { 'plant-part': 'leaves', 'leaf-change': 'holes or chewed edges', 'leaf-holes': 'smooth notches from the edge', 'after-dark': answer }
  let evidence: Evidence = { redFlags: [], carriedOn: false, start: { host: 'hosta' as never, node: null }, findings: [] }
  for (;;) {
    const { step } = readCase(guide, evidence, { on: '2026-06-15', district: null })
    if (step.kind === 'hand-over') return step.unsettled
    if (step.kind !== 'ask') throw new Error(`The case ended in ${step.kind}.`)
    evidence = { ...evidence, findings: withFinding(evidence.findings, { check: step.check, answer: seen[step.check] ?? NOT_SURE, from: 'asked' }) }
  }
}

describe('engine: looks that would still settle a case', () => {
  it('begin with what the asker put off', () => {
    expect(namedWhereDarkIs(CANT_LOOK)[0]).toBe('after-dark')
    expect(namedWhereDarkIs(CANT_LOOK).length).toBeLessThanOrEqual(3)
  })

  it('leave out what the asker looked at and was not sure of', () => {
    expect(namedWhereDarkIs(NOT_SURE)).not.toContain('after-dark')
  })

  it('are those that tell most by what was found, whatever was reckoned before them', () => {
    const named = (findings: readonly (readonly [string, string])[]) => {
      const evidence: Evidence = {
        redFlags: [], carriedOn: false, start: { host: 'hosta' as never, node: null },
        findings: findings.map(([check, answer]) => ({ check: check as never, answer, from: 'asked' as const })),
      }
      const plan = planCase(guide, evidence, { on: '2026-06-15', district: null })
      if (plan.state === null) throw new Error('The plant is settled.')
      const { state } = plan
      const first = unsettledChecks({ ...state }).map(({ id }) => id)
      // As a second look or the reasons leave it: without the last finding.
      state.belief.restate(state.priors, state.sightings.slice(0, -1))
      expect(unsettledChecks({ ...state }).map(({ id }) => id)).toEqual(first)
      state.belief.restate(state.priors, [])
      expect(unsettledChecks({ ...state }).map(({ id }) => id)).toEqual(first)
      return first
    }
    expect(named([['leaf-change', 'holes or chewed edges'], ['leaf-holes', 'smooth notches from the edge']]).length).toBeGreaterThan(0)
    expect(named([['plant-part', 'leaves'], ['leaf-change', 'yellow or pale']]).length).toBeGreaterThan(0)
  })
})
