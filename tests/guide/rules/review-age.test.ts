import { describe, expect, it } from 'vitest'
import { compileGuide } from '../../../src/guide/index.js'
import { append, brief, lettuceFiles, swap, warningsOf } from '../lettuce-world.js'

const reviewed = (date: string) => swap('reviewed: { on: 2026-11-25 }', `reviewed: { on: ${date} }`)

describe('rule: a review is at most three years old', () => {
  it('accepts a review exactly three years ago', () => {
    expect(warningsOf({ 'problems/slugs.yaml': reviewed('2023-11-25') })).toEqual([])
  })

  it('points at the date of a review three years and a day ago', () => {
    expect(warningsOf({ 'problems/slugs.yaml': reviewed('2023-11-24') })).toEqual([{ code: 'OLD_REVIEW', at: 'trees/problems/slugs.yaml:16:17', nearest: [] }])
  })

  it('reckons from a leap day', () => {
    const at = (date: string) => brief(compileGuide(lettuceFiles({ 'problems/slugs.yaml': reviewed(date) }), { today: '2028-02-29' }).warnings)
    expect(at('2025-03-01')).toEqual([])
    expect(at('2025-02-28').map(({ code }) => code)).toEqual(['OLD_REVIEW'])
  })

  it('reports every old review, not only the first', () => {
    expect(warningsOf({ 'problems/slugs.yaml': reviewed('2019-01-01'), 'problems/tipburn.yaml': reviewed('2020-01-01') }).map(({ at }) => at))
      .toEqual(['trees/problems/slugs.yaml:16:17', 'trees/problems/tipburn.yaml:16:17'])
  })

  it('is silent where the problem accepts it with a reason', () => {
    expect(warningsOf({
      'problems/slugs.yaml': (text) => append('accepts: [{ warning: OLD_REVIEW, because: nothing has changed }]\n')(reviewed('2019-01-01')(text)),
    })).toEqual([])
  })
})
