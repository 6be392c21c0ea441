import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { logPriors, readCase } from '../../src/engine/index.js'
import type { Guide, Host } from '../../src/guide/index.js'
import { LEAST_FACTOR, LEAST_FACTOR_OF_WATCH, MOST_FACTOR } from '../../src/season/index.js'
import { wholeGuide } from '../whole-guide.js'

let guide: Guide
let hosts: readonly Host[]
beforeAll(async () => {
  guide = await wholeGuide()
  hosts = guide.hosts.filter(({ problems }) => problems.length > 1)
})

const factors = fc.double({ min: 0.01, max: 100, noNaN: true })
const idsOf = (host: Host): string[] => [...host.problems].map((number) => guide.problems[number]?.id ?? '')

/** A host with factors for some of its problems, and a month. */
const seasons = () => fc.record({ place: fc.nat(), month: fc.integer({ min: 1, max: 12 }), drawn: fc.array(factors, { minLength: 1, maxLength: 40 }) })
  .map(({ place, month, drawn }) => {
    const host = hosts[place % hosts.length]
    if (host === undefined) throw new Error('There is no host.')
    return { host, month, plausible: Object.fromEntries(idsOf(host).slice(0, drawn.length).map((id, row) => [id, drawn[row] ?? 1])) }
  })

describe('priors with what the season says', () => {
  it('are the very same numbers without it, or with factors of one', () => {
    for (const host of hosts) {
      const plain = logPriors(guide, host, 6)
      expect(logPriors(guide, host, 6, null, null, {})).toEqual(plain)
      expect(logPriors(guide, host, 6, null, null, Object.fromEntries(idsOf(host).map((id) => [id, 1])))).toEqual(plain)
      expect(logPriors(guide, host, 6, null, null, { 'a-problem-of-no-host': 3 })).toEqual(plain)
    }
  })

  it('sum to one, leave *something not listed here* its share, and rule nothing out', () => {
    fc.assert(fc.property(seasons(), ({ host, month, plausible }) => {
      const priors = logPriors(guide, host, month, null, null, plausible)
      expect(priors.reduce((sum, log) => sum + Math.exp(log), 0)).toBeCloseTo(1, 9)
      expect(priors.at(-1)).toBe(logPriors(guide, host, month).at(-1))
      expect(priors.every((log) => Number.isFinite(log))).toBe(true)
    }))
  })

  it('move the odds of two problems by no more than the caps, and never push a watch problem below its floor', () => {
    fc.assert(fc.property(seasons(), ({ host, month, plausible }) => {
      const [plain, moved] = [logPriors(guide, host, month), logPriors(guide, host, month, null, null, plausible)]
      const still = idsOf(host).findIndex((id) => plausible[id] === undefined)
      if (still < 0) return
      const shift = (row: number) => Math.exp((moved[row] ?? 0) - (plain[row] ?? 0) - (moved[still] ?? 0) + (plain[still] ?? 0))
      idsOf(host).forEach((id, row) => {
        const isWatch = guide.problems[guide.problemNumbers.get(id) ?? -1]?.watch != null
        expect(shift(row)).toBeLessThanOrEqual(MOST_FACTOR * (1 + 1e-9))
        expect(shift(row)).toBeGreaterThanOrEqual((isWatch ? LEAST_FACTOR_OF_WATCH : LEAST_FACTOR) * (1 - 1e-9))
      })
    }))
  })

  it('make a problem likelier the larger its factor is', () => {
    fc.assert(fc.property(seasons(), factors, factors, ({ host, month }, one, other) => {
      const [id = ''] = idsOf(host)
      const with_ = (factor: number) => logPriors(guide, host, month, null, null, { [id]: factor })[0] ?? 0
      expect(with_(Math.max(one, other))).toBeGreaterThanOrEqual(with_(Math.min(one, other)))
    }))
  })

  it('reach the differential of a case, and leave it alone where nothing is said', () => {
    const host = guide.hosts.find(({ id }) => id === 'tomato')
    if (host === undefined) throw new Error('There is no tomato.')
    const evidence = { redFlags: [], carriedOn: false, start: { host: host.id, node: null }, findings: [] }
    const setting = { on: '2026-08-01', district: 'holt-fen' }
    const plain = readCase(guide, evidence, setting)
    expect(readCase(guide, evidence, { ...setting, plausible: {} })).toEqual(plain)
    const share = (plausible: Record<string, number>) => readCase(guide, evidence, { ...setting, plausible }).differential.find(({ problem }) => problem === 'tomato-late-blight')?.probability ?? 0
    expect(share({ 'tomato-late-blight': 3 })).toBeGreaterThan(share({}) * 2)
  })
})
