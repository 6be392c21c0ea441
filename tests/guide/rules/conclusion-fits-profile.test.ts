import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { compileLettuce, errorsOf, swap } from '../lettuce-world.js'

describe('rule: a conclusion fits its profile', () => {
  it('accepts *never* for an answer that does not lead to the problem', () => {
    expect(errorsOf({ 'problems/tipburn.yaml': swap('{ brown edges: almost always }', '{ brown edges: almost always, ragged holes: never }') })).toEqual([])
  })

  it('accepts *almost never* on the way to the problem', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('yes: usually', 'yes: almost never') })).toEqual([])
  })

  it('points at the answer and at the word of the profile that contradict each other', () => {
    const { errors } = compileLettuce({ 'problems/slugs.yaml': swap('yes: usually', 'yes: never') })
    expect(errors.map(({ code, at }) => [code, ...at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))])).toEqual([
      ['CONTRADICTS_PROFILE', { file: 'trees/hosts/lettuce.yaml', line: 24, column: 12 }, { file: 'trees/problems/slugs.yaml', line: 10, column: 12 }],
    ])
  })

  it('sees a contradiction several checks before the conclusion', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('ragged holes: almost always', 'ragged holes: never') }))
      .toEqual([{ code: 'CONTRADICTS_PROFILE', at: 'trees/hosts/lettuce.yaml:11:21', nearest: [] }])
  })

  it('sees a contradiction behind *other answers*', () => {
    const toMildew = swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: { problem: downy-mildew }')
    expect(errorsOf({ 'hosts/lettuce.yaml': toMildew })).toEqual([])
    expect(errorsOf({ 'hosts/lettuce.yaml': toMildew, 'problems/downy-mildew.yaml': swap('nothing: sometimes', 'nothing: never') }))
      .toEqual([{ code: 'CONTRADICTS_PROFILE', at: 'trees/hosts/lettuce.yaml:19:22', nearest: [] }])
  })

  it('reports every contradiction, not only the first', () => {
    expect(errorsOf({
      'problems/slugs.yaml': (text) => text.replace('ragged holes: almost always', 'ragged holes: never').replace('yes: usually', 'yes: never'),
      'problems/tipburn.yaml': swap('brown edges: almost always', 'brown edges: never'),
    })).toEqual([
      { code: 'CONTRADICTS_PROFILE', at: 'trees/hosts/lettuce.yaml:11:21', nearest: [] },
      { code: 'CONTRADICTS_PROFILE', at: 'trees/hosts/lettuce.yaml:12:20', nearest: [] },
      { code: 'CONTRADICTS_PROFILE', at: 'trees/hosts/lettuce.yaml:24:12', nearest: [] },
    ])
  })
})
