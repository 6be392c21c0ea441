import { describe, expect, it } from 'vitest'
import type { GuideError } from '../../src/guide/index.js'
import { parseFile } from '../../src/guide/parse.js'
import { lineAndColumn } from '../../src/guide/source-file.js'
import { brief } from './lettuce-world.js'

function parse(text: string) {
  const errors: GuideError[] = []
  return { parsed: parseFile({ path: 'trees/checks/slime.yaml', text }, (error) => errors.push(error)), errors: brief(errors), full: errors }
}

describe('parsing one file', () => {
  it('gives plain values, and the place of each value and each key', () => {
    const { parsed, errors } = parse('check: slime\nanswers:\n  "yes": { said as: [slimy, wet] }\n')
    expect(errors).toEqual([])
    expect(parsed?.values).toEqual({ check: 'slime', answers: { yes: { 'said as': ['slimy', 'wet'] } } })
    const at = (path: (string | number)[]) => parsed && lineAndColumn(parsed.at(path))
    expect(at(['check'])).toEqual({ line: 1, column: 8 })
    expect(at(['answers', 'yes', 'said as', 1])).toEqual({ line: 3, column: 29 })
    expect(parsed && lineAndColumn(parsed.keyAt(['answers', 'yes']))).toEqual({ line: 3, column: 3 })
  })

  it('points at the nearest enclosing value for what is not there', () => {
    const { parsed } = parse('check: slime\nanswers: { yes: {} }\n')
    expect(parsed && lineAndColumn(parsed.at(['answers', 'no', 'said as']))).toEqual({ line: 2, column: 10 })
    expect(parsed && lineAndColumn(parsed.keyAt(['answers', 'no']))).toEqual({ line: 2, column: 10 })
  })

  it('keeps yes and no as words, not as true and false', () => {
    expect(parse('answers: [yes, no]').parsed?.values).toEqual({ answers: ['yes', 'no'] })
  })

  it('counts columns in files with Windows line ends', () => {
    const { parsed } = parse('check: slime\r\nask: what\r\n')
    expect(parsed && lineAndColumn(parsed.at(['ask']))).toEqual({ line: 2, column: 6 })
    expect(parsed?.values).toEqual({ check: 'slime', ask: 'what' })
  })

  it('points at a value through an alias where it was first written', () => {
    const { parsed } = parse('one: &a { deep: [1, 2] }\ntwo: *a\n')
    expect(parsed && lineAndColumn(parsed.at(['two', 'deep', 1]))).toEqual({ line: 1, column: 21 })
  })

  it.each([
    ['an open bracket', 'kind: [disorder\ncost: ordinary\n', '2:1'],
    ['a key given twice', 'check: slime\ncheck: slime\n', '2:1'],
    ['a tab for indentation', 'answers:\n\tyes: {}\n', '2:1'],
    ['an open quote', 'ask: "what\n', '2:1'],
    ['a colon inside plain text', 'ask: what: then\n', '1:6'],
  ])('points at %s', (_what, text, at) => {
    const { parsed, errors } = parse(text)
    expect(parsed).toBeNull()
    expect(errors[0]).toEqual({ code: 'YAML', at: `trees/checks/slime.yaml:${at}`, nearest: [] })
  })

  it('reports every syntax fault of a file, not only the first', () => {
    expect(parse('check: a\ncheck: b\nask: a\nask: b\n').errors).toEqual([
      { code: 'YAML', at: 'trees/checks/slime.yaml:2:1', nearest: [] },
      { code: 'YAML', at: 'trees/checks/slime.yaml:4:1', nearest: [] },
    ])
  })

  it('says what was expected', () => {
    expect(parse('check: slime\ncheck: slime\n').full[0]?.message)
      .toBe('This is not YAML as it should be: Map keys must be unique. Expected keys and values, one a line, indented by spaces.')
  })

  it('refuses aliases that would grow without bound', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]']
    for (let level = 1; level < 9; level++) lines.push(`a${level}: &a${level} [${Array.from({ length: 10 }, () => `*a${level - 1}`).join(', ')}]`)
    const { parsed, errors } = parse(lines.join('\n'))
    expect(parsed).toBeNull()
    expect(errors).toEqual([{ code: 'YAML', at: 'trees/checks/slime.yaml:1:1', nearest: [] }])
  })

  it('gives null values for an empty file, without a fault', () => {
    const { parsed, errors } = parse('')
    expect(parsed?.values).toBeNull()
    expect(errors).toEqual([])
  })
})
