import { beforeAll, describe, expect, it } from 'vitest'
import { type Replayed, replayCase } from '../../../src/desk/index.js'
import type { Guide } from '../../../src/guide/index.js'
import { buildMatchIndex } from '../../../src/match/index.js'
import { wholeGuide } from '../../whole-guide.js'

describe('the casebook of the demonstration guide', () => {
  let guide: Guide
  let results: readonly Replayed[]

  beforeAll(async () => {
    guide = await wholeGuide()
    const index = buildMatchIndex(guide)
    results = guide.casebook.map((worked) => replayCase(guide, index, worked))
  })

  it('holds at least 60 cases, hand-overs and red flags among them', () => {
    expect(results.length).toBeGreaterThanOrEqual(60)
    expect(results.filter(({ expected }) => expected === 'hand over').length).toBeGreaterThanOrEqual(results.length / 10)
    expect(results.filter(({ expected }) => expected.startsWith('red flag')).length).toBeGreaterThanOrEqual(results.length / 20)
  })

  it('ends as expected in at least 95 of 100 cases', () => {
    const failed = results.filter(({ ok }) => !ok).map((result) => `${result.case}: ${result.concluded}, not ${result.expected}`)
    expect(failed.length / results.length, failed.join('\n')).toBeLessThanOrEqual(0.05)
  })

  it('is never wrong and sure', () => {
    expect(results.filter(({ ok, probability }) => !ok && (probability ?? 0) >= 0.95)).toEqual([])
  })

  it('hears every red flag', () => {
    expect(results.filter(({ ok, expected }) => !ok && expected.startsWith('red flag'))).toEqual([])
  })

  it('raises no alarm for a case that is only about a plant', () => {
    expect(results.filter(({ concluded, expected }) => concluded.startsWith('red flag') && !expected.startsWith('red flag'))).toEqual([])
  })

  it('asks the median case few checks', () => {
    const counts = results.map(({ asked }) => asked.length).sort((a, b) => a - b)
    expect(counts[Math.floor(counts.length / 2)]).toBeLessThanOrEqual(4)
  })
})
