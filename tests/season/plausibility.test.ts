import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Guide } from '../../src/guide/index.js'
import {
  cappedFactor, LEAST_FACTOR, LEAST_FACTOR_OF_WATCH, MOST_BY_REPORTS, MOST_FACTOR, moveInWords, plausibilities, presenceFactors, presenceStates,
  reasonInWords, reasonWords, type SeasonHere,
} from '../../src/season/index.js'
import { wholeGuide } from '../whole-guide.js'

let guide: Guide
let watched: string
beforeAll(async () => {
  guide = await wholeGuide()
  watched = guide.problems.find(({ watch }) => watch !== null)?.id ?? ''
})

const here: SeasonHere = { district: 'holt-fen', on: '2026-05-14', recent: [], presence: [], weather: null }
const blight = (cases: number, week = '2026-W20') => ({ problem: 'tomato-late-blight', host: 'tomato', week, reports: cases, cases })

describe('how plausible a problem is here and now', () => {
  it('is left as it is where nothing is known', () => {
    expect(plausibilities(guide, here)).toEqual([])
  })

  it('rises with reports of the district, towards their ratio to what the guide leads one to expect', () => {
    const [problem] = guide.problems.filter(({ id }) => id === 'tomato-late-blight')
    const host = guide.hosts.find(({ id }) => id === 'tomato')
    const share = host?.commonness[host.problems.indexOf(problem?.number ?? -1)] ?? Number.NaN
    const [moved, ...others] = plausibilities(guide, { ...here, recent: [blight(3)] })
    expect(others).toEqual([])
    expect(moved?.factor).toBeCloseTo((3 + 3) / (3 * share + 3), 12)
    expect(moveInWords(true, moved?.reasons ?? [])).toBe('more likely here now: 3 reports in Holt Fen this week')
    expect(moveInWords(true, moved?.reasons ?? [], 'es')).toBe('más probable aquí y ahora: 3 avisos en Holt Fen esta semana')
    expect(plausibilities(guide, { ...here, recent: [blight(1, '2026-W18'), blight(1)] })[0]?.reasons[0]?.code).toBe('reports lately')
    expect(plausibilities(guide, { ...here, recent: [blight(500)] })[0]?.factor).toBe(MOST_BY_REPORTS)
  })

  it('does not rise where the reports are only as many as the guide leads one to expect', () => {
    const host = guide.hosts.find(({ id }) => id === 'tomato')
    if (host === undefined) throw new Error('There is no tomato.')
    const recent = [...host.problems].map((number, row) => {
      const reports = 40 * (host.commonness[row] ?? 0)
      return { problem: guide.problems[number]?.id ?? '', host: 'tomato', week: '2026-W20', reports, cases: Math.ceil(reports) }
    })
    expect(plausibilities(guide, { ...here, recent })).toEqual([])
  })

  it.each(presenceStates)('follows the presence of a watch problem: *%s*', (state) => {
    const presence = [{ problem: watched, district: 'holt-fen', state, on: '2026-05-01', by: 'sedge', why: 'seen' }]
    expect(plausibilities(guide, { ...here, presence })).toEqual([{
      problem: watched, factor: presenceFactors[state],
      reasons: [{ code: 'presence', values: { state, district: 'Holt Fen', on: '2026-05-01' } }],
    }])
  })

  it('counts a watch problem as near when it is present next door, and says where', () => {
    const presence = [{ problem: watched, district: 'eastmere', state: 'present' as const, on: '2026-05-01', by: 'sedge', why: 'seen' }]
    const [moved] = plausibilities(guide, { ...here, presence })
    expect(moved?.factor).toBe(presenceFactors['found nearby'])
    expect(moveInWords(true, moved?.reasons ?? [])).toBe('more likely here now: found in Eastmere, next door')
  })

  it('stays within its caps, and a watch problem above its floor, whatever is multiplied', () => {
    fc.assert(fc.property(fc.boolean(), fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { maxLength: 6 }), (isWatch, factors) => {
      const factor = cappedFactor(isWatch, factors)
      expect(factor).toBeLessThanOrEqual(MOST_FACTOR)
      expect(factor).toBeGreaterThanOrEqual(isWatch ? LEAST_FACTOR_OF_WATCH : LEAST_FACTOR)
    }))
    expect(cappedFactor(true, [])).toBe(1)
  })
})

describe('the words for what the season moves', () => {
  it('are there in every language for every reason that the weather gives', () => {
    for (const code of Object.keys(reasonWords)) {
      const reason = { code, values: { count: 2, days: 21, sum: 30, least: 9, most: 30, hours: 8, rain: 6, base: 10, unit: 'C' } }
      const words = ['en', 'es'].map((language) => reasonInWords(reason, language))
      expect(new Set([code, ...words]).size).toBe(3)
      expect(words.join(' ')).not.toMatch(/[{}]|undefined/)
    }
  })
})
