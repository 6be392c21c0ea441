import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readingGrade } from '../../src/guide/index.js'
import { publicCounts } from '../../src/season/reports/small-counts.js'
import { draftNote, type WeekOfProblem } from '../../src/season/weekly-note.js'
import { wholeGuide } from '../whole-guide.js'

const LEAST = 5
const DISTRICTS = new Map([['fen', 'Holt Fen'], ['mere', 'Eastmere'], ['carse', 'Upper Carse']])
const draft = (weeks: readonly WeekOfProblem[]) => draftNote(weeks, DISTRICTS)

/** A problem's week from its cases by district. */
function weekOf(name: string, cases: Readonly<Record<string, number>>, more: Partial<WeekOfProblem> = {}): WeekOfProblem {
  return {
    problem: name.toLowerCase(), name, bottomLine: 'Pick off the bad leaves.', counts: publicCounts(new Map(Object.entries(cases)), LEAST),
    isUnusualRise: false, usual: null, ...more,
  }
}

describe('the draft of a week’s note', () => {
  it('names the most reported first, an unusual rise before all others, and equals by their names', () => {
    const { problems } = draft([weekOf('Rust', { fen: 6 }), weekOf('Scab', { fen: 9 }), weekOf('Aphids', { fen: 6 }), weekOf('Blight', { fen: 5 }, { isUnusualRise: true })])
    expect(problems.map(({ problem }) => problem)).toEqual(['blight', 'scab', 'aphids', 'rust'])
  })

  it('names six at most', () => {
    expect(draft(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'].map((name) => weekOf(name, { fen: 8 }))).problems).toHaveLength(6)
  })

  it('does not name what too few asked about, not even when that is an unusual rise', () => {
    const { problems } = draft([weekOf('Blight', { fen: 2, mere: 2 }, { isUnusualRise: true }), weekOf('Rust', { fen: 5 })])
    expect(problems.map(({ problem }) => problem)).toEqual(['rust'])
  })

  it('says of a week without any such problem that it was quiet', () => {
    expect(draft([])).toEqual({ lead: 'It was a quiet week. Few people asked for help, and nothing stood out.', problems: [] })
    expect(draft([weekOf('Blight', { fen: 4 })])).toEqual(draft([]))
  })

  it('says how many, from where, and what to do', () => {
    const text = (cases: Readonly<Record<string, number>>) => draft([weekOf('Rust', cases)]).problems[0]?.text
    expect(text({ fen: 7 })).toBe('We had 7 reports, all from Holt Fen. Pick off the bad leaves.')
    expect(text({ fen: 9, mere: 6 })).toBe('We had 15 reports, most of them from Holt Fen. Pick off the bad leaves.')
    expect(text({ fen: 7, mere: 6, carse: 5 })).toBe('We had 18 reports, many of them from Holt Fen. Pick off the bad leaves.')
    expect(text({ fen: 3, mere: 4 })).toBe('We had 7 reports. Pick off the bad leaves.')
  })

  it('speaks of no place that has no name or only a small share', () => {
    const text = (cases: Readonly<Record<string, number>>) => draft([weekOf('Rust', cases)]).problems[0]?.text
    expect(text({ elsewhere: 7, fen: 5 })).toBe('We had 12 reports, many of them from Holt Fen. Pick off the bad leaves.')
    expect(text({ elsewhere: 7 })).toBe('We had 7 reports. Pick off the bad leaves.')
    expect(text({ elsewhere: 20, fen: 6 })).toBe('We had 26 reports. Pick off the bad leaves.')
  })

  it('compares with other years only where there are some', () => {
    const text = (more: Partial<WeekOfProblem>) => draft([weekOf('Rust', { fen: 3, mere: 3 }, more)]).problems[0]?.text
    expect(text({ usual: 2 })).toBe('We had 6 reports. That is more than in other years. Pick off the bad leaves.')
    expect(text({ usual: 5 })).toBe('We had 6 reports. Pick off the bad leaves.')
    expect(text({ usual: 2, isUnusualRise: true })).toBe('We had 6 reports. That is unusually many. Pick off the bad leaves.')
  })

  it('writes no number below the set size, whatever the week brought', () => {
    const cases = fc.dictionary(fc.constantFrom('fen', 'mere', 'carse', 'moor'), fc.nat(12))
    const week = fc.record({ cases, isUnusualRise: fc.boolean(), usual: fc.option(fc.double({ min: 0, max: 20, noNaN: true })) })
    fc.assert(fc.property(fc.array(week, { maxLength: 9 }), (weeks) => {
      const note = draft(weeks.map(({ cases, ...rest }, place) => weekOf(String.fromCharCode(65 + place), cases, rest)))
      const numbers = [note.lead, ...note.problems.map(({ text }) => text)].join(' ').match(/\d+/g) ?? []
      expect(numbers.map(Number).filter((number) => number < LEAST)).toEqual([])
    }))
  })

  it('reads at grade 8 or below in every part that is its own, and as a whole for each problem of the guide', async () => {
    const { problems } = await wholeGuide()
    const hard = problems.flatMap(({ name, advice: { bottomLine } }) => [{ fen: 9 }, { fen: 9, carse: 7 }, { fen: 4, carse: 4 }]
      .flatMap((cases) => [{ usual: null }, { usual: 1 }, { usual: 1, isUnusualRise: true }].flatMap((more) => {
        const { lead, problems: [one] } = draft([weekOf(name, cases, { ...more, bottomLine })])
        return [lead, one?.text ?? ''].filter((text) => readingGrade(text) > 8)
      })))
    expect(hard).toEqual([])
    expect(readingGrade(draft([]).lead)).toBeLessThanOrEqual(8)
    expect(readingGrade(draft([weekOf('A', { fen: 8 }), weekOf('B', { fen: 8 })]).lead)).toBeLessThanOrEqual(8)
  })
})
