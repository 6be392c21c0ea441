import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { compileLettuce, errorsOf, ROSE, swap } from '../lettuce-world.js'

const NO_SLIME = 'no: { hand over: "Holes without slime have many causes." }'
const NO_FUZZ = 'other answers: { hand over: "Pale patches without fuzz need a closer look." }'

describe('rule: no cycles', () => {
  it('accepts two ways that meet again', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap(NO_FUZZ, 'other answers: slime') })).toEqual([])
  })

  it('points at a node that leads to itself', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap(NO_SLIME, 'no: slime') }))
      .toEqual([{ code: 'CYCLE', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] }])
  })

  it('points at each node of a longer cycle, in order', () => {
    const { errors } = compileLettuce({ 'hosts/lettuce.yaml': swap(NO_SLIME, 'no: top') })
    expect(errors.map(({ message }) => message)).toEqual(['The tree goes round in a circle: "top" → "slime" → "top". Expected every path to end.'])
    expect(errors[0]?.at.map(lineAndColumn)).toEqual([{ line: 6, column: 3 }, { line: 20, column: 3 }])
  })

  it('sees a cycle through *not sure*', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('not sure: underside', 'not sure: top') }))
      .toEqual([{ code: 'CYCLE', at: 'trees/hosts/lettuce.yaml:6:3', nearest: [] }])
  })

  it('reports a cycle once, though two answers close it', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap(NO_FUZZ, 'other answers: top') }))
      .toEqual([{ code: 'CYCLE', at: 'trees/hosts/lettuce.yaml:6:3', nearest: [] }])
  })

  it('reports every cycle, not only the first', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': (text) => text.replace(NO_SLIME, 'no: slime').replace(NO_FUZZ, 'other answers: underside') })).toEqual([
      { code: 'CYCLE', at: 'trees/hosts/lettuce.yaml:14:3', nearest: [] },
      { code: 'CYCLE', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] },
    ])
  })

  it('sees a cycle across the trees of two hosts', () => {
    const { errors } = compileLettuce({
      'hosts/lettuce.yaml': swap(NO_SLIME, 'no: { host: rose }'),
      'hosts/rose.yaml': ROSE.replace('no: { hand over: "A rose has many troubles." }', 'no: { host: lettuce, node: slime }'),
    })
    expect(errors.map(({ code, at }) => [code, ...at.map((place) => place.file.path)]))
      .toEqual([['CYCLE', 'trees/hosts/lettuce.yaml', 'trees/hosts/rose.yaml']])
  })

  it('follows a chain of 1500 nodes to its end', () => {
    const chain = Array.from({ length: 1500 }, (_, place) => `  link-${place}:
    check: slime
    answers: { yes: { hand over: "Slime." }, no: ${place === 1499 ? 'top' : `link-${place + 1}`} }\n`).join('')
    const { errors } = compileLettuce({ 'hosts/lettuce.yaml': (text) => text.replace('start: top', 'start: link-0').replace('nodes:\n', `nodes:\n${chain}`) })
    expect(errors).toEqual([])
  })
})
