import { describe, expect, it } from 'vitest'
import type { LikelyLine } from '../../shared/index.js'
import { groupProblems, type ProblemRow } from '../../src/web/bench/problem-groups.js'

const tomato = { host: 'tomato', name: 'Tomato' }
const hosta = { host: 'hosta', name: 'Hosta' }
const apple = { host: 'apple', name: 'Apple' }

const problems: readonly ProblemRow[] = [
  row('slugs-and-snails', 'Slugs and snails', [apple, tomato]), row('hosta-slugs', 'Slugs and snails', [hosta]),
  row('tomato-leaf-mould', 'Tomato leaf mould', [tomato]), row('tomato-late-blight', 'Tomato late blight', [tomato]),
  row('apple-scab', 'Apple scab', [apple]),
]
const differential = [likely('tomato-late-blight', 0.6), likely(null, 0.3), likely('tomato-leaf-mould', 0.01)]

describe('the problems to choose from', () => {
  it('has the likely ones first and then those of the ticket’s plant, each once', () => {
    expect(titles(groupProblems(problems, { plants: ['tomato'], differential, typed: '' }))).toEqual([
      ['Likely here', 'tomato-late-blight'], ['Tomato', 'slugs-and-snails', 'tomato-leaf-mould'],
    ])
  })

  it('keeps the problems of other plants back until something is typed, and says how many', () => {
    expect(groupProblems(problems, { plants: ['tomato'], differential, typed: '' }).hidden).toBe(2)
  })

  it('tells two problems of one name apart by their plants', () => {
    expect(titles(groupProblems(problems, { plants: ['tomato'], differential, typed: 'slugs' }))).toEqual([
      ['Tomato', 'slugs-and-snails'], ['Hosta', 'hosta-slugs'],
    ])
  })

  it('narrows by words of the name and the plant together, whatever the order', () => {
    expect(titles(groupProblems(problems, { plants: [], differential: [], typed: 'hosta SLUG' }))).toEqual([['Hosta', 'hosta-slugs']])
  })

  it('leads with the guessed plants when the ticket has none', () => {
    expect(titles(groupProblems(problems, { plants: ['apple', 'hosta'], differential: [], typed: '' }))).toEqual([
      ['Apple', 'slugs-and-snails', 'apple-scab'], ['Hosta', 'hosta-slugs'],
    ])
  })

  it('looks at what a problem does only where no name has the words', () => {
    const told = problems.map(each => ({ ...each, what: each.problem === 'apple-scab' ? 'A fungus that comes late and makes olive spots.' : '' }))
    expect(titles(groupProblems(told, { plants: [], differential: [], typed: 'late' }))).toEqual([['Tomato', 'tomato-late-blight']])
    expect(titles(groupProblems(told, { plants: [], differential: [], typed: 'olive' }))).toEqual([['Apple', 'apple-scab']])
  })

  it('finds nothing for words that no problem has', () => {
    expect(groupProblems(problems, { plants: ['tomato'], differential, typed: 'moon' })).toEqual({ groups: [], hidden: 0 })
  })
})

function row(problem: string, name: string, plants: ProblemRow['plants']): ProblemRow {
  return { problem, name, plants, what: '', advice: `About ${name}.`, leftOut: [] }
}

function likely(problem: string | null, probability: number): LikelyLine {
  return { problem, name: problem ?? 'Something not listed here', what: '', probability, for: [], against: [] }
}

function titles({ groups }: ReturnType<typeof groupProblems>): string[][] {
  return groups.map(group => [group.title, ...group.rows.map(each => each.problem)])
}
