import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { compileLettuce, errorsOf, ROSE, swap } from '../lettuce-world.js'

describe('rule: every problem is reached', () => {
  it('accepts a problem that only *not sure* or *other answers* lead to', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': (text) => text.replace('yes: { problem: slugs }', 'yes: { hand over: "Slime." }\n    not sure: { problem: slugs }')
        .replace('no: { hand over: "Holes without slime have many causes." }\n', '').replace('    not sure: { problem: slugs }\n', '      other answers: { hand over: "No slime." }\n    not sure: { problem: slugs }\n'),
    })).toEqual([])
    expect(errorsOf({
      'hosts/lettuce.yaml': swap('yes: { problem: slugs }\n      no: { hand over: "Holes without slime have many causes." }', 'no: { hand over: "No slime." }\n      other answers: { problem: slugs }'),
    })).toEqual([])
  })

  it('points at the host in the problem\'s list, and at the tree', () => {
    const { errors } = compileLettuce({ 'hosts/lettuce.yaml': swap('yes: { problem: slugs }', 'yes: { hand over: "Slime." }') })
    expect(errors.map(({ code, at }) => [code, ...at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))])).toEqual([
      ['PROBLEM_NOT_REACHED', { file: 'trees/problems/slugs.yaml', line: 5, column: 10 }, { file: 'trees/hosts/lettuce.yaml', line: 1, column: 7 }],
    ])
  })

  it('asks it of each host that the problem lists', () => {
    expect(errorsOf({ 'hosts/rose.yaml': ROSE, 'problems/slugs.yaml': swap('lettuce: common', 'lettuce: common, rose: rare') }))
      .toEqual([{ code: 'PROBLEM_NOT_REACHED', at: 'trees/problems/slugs.yaml:5:27', nearest: [] }])
  })

  it('reports every problem that is not reached, not only the first', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': (text) => text.replace('{ problem: slugs }', '{ hand over: "Slime." }').replace('{ problem: tipburn }', '{ hand over: "Brown." }') }))
      .toEqual([
        { code: 'PROBLEM_NOT_REACHED', at: 'trees/problems/slugs.yaml:5:10', nearest: [] },
        { code: 'PROBLEM_NOT_REACHED', at: 'trees/problems/tipburn.yaml:5:10', nearest: [] },
      ])
  })
})
