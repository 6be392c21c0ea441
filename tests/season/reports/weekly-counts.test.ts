import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { repeatsAmong, type Report, weeklyCounts } from '../../../src/season/index.js'

function report(caseId: number, more: Partial<Report> = {}): Report {
  return { caseId, problem: 'rose-black-spot', host: 'rose', district: 'holt-fen', askedOn: '2026-05-14', basis: 'settled', weight: 1, asker: caseId, ...more }
}

describe('weekly counts', () => {
  it('add up by problem, host, district and week, by weight and by case', () => {
    expect(weeklyCounts([
      report(1), report(2, { basis: 'concluded', weight: 0.75 }), report(3, { district: null }), report(4, { askedOn: '2026-05-18' }),
    ])).toEqual([
      { problem: 'rose-black-spot', host: 'rose', district: 'holt-fen', week: '2026-W20', reports: 1.75, cases: 2, settled: 1 },
      { problem: 'rose-black-spot', host: 'rose', district: 'holt-fen', week: '2026-W21', reports: 1, cases: 1, settled: 1 },
      { problem: 'rose-black-spot', host: 'rose', district: null, week: '2026-W20', reports: 1, cases: 1, settled: 1 },
    ])
  })

  it('count one asker’s repeats of one problem once, and another problem or another half-year anew', () => {
    const asker = 7
    expect([...repeatsAmong([
      report(3, { asker, askedOn: '2026-06-01' }), report(2, { asker }), report(1),
      report(4, { asker, problem: 'rose-rust' }), report(5, { asker, askedOn: '2026-12-01' }),
    ])]).toEqual([3])
  })

  it('are the same in whatever order the reports come, and never more than the cases', () => {
    const some = fc.array(fc.record({
      caseId: fc.integer({ min: 1, max: 1e6 }), asker: fc.integer({ min: 1, max: 4 }), problem: fc.constantFrom('a', 'b'),
      weight: fc.constantFrom(0.5, 0.75, 1), askedOn: fc.constantFrom('2026-01-04', '2026-01-05', '2026-05-01', '2026-12-31'),
    }), { maxLength: 20 }).map((rows) => [...new Map(rows.map((row) => [row.caseId, report(row.caseId, row)])).values()])
    fc.assert(fc.property(some, (reports) => {
      const counts = weeklyCounts(reports)
      expect(weeklyCounts([...reports].reverse())).toEqual(counts)
      expect(counts.reduce((sum, { cases }) => sum + cases, 0)).toBe(reports.length - repeatsAmong(reports).size)
    }))
  })
})
