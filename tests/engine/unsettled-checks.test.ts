import { beforeAll, describe, expect, it } from 'vitest'
import { type Evidence, readCase, withFinding } from '../../src/engine/index.js'
import { CANT_LOOK, type Guide, loadGuide, NOT_SURE } from '../../src/guide/index.js'

let guide: Guide
beforeAll(async () => {
  const loaded = await loadGuide('trees', '2026-11-25')
  if (loaded.guide === null) throw new Error('The shipped guide does not compile.')
  guide = loaded.guide
})

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
})
