import { describe, expect, it } from 'vitest'
import { errorsOf, ROSE, swap } from '../lettuce-world.js'

const WITHOUT_ENTRY = swap('    entry: ["holes in the leaves"]\n', '')
const cutOff = (text: string) => WITHOUT_ENTRY(text).replace('ragged holes: slime', 'ragged holes: underside')

describe('rule: no unreachable nodes', () => {
  it('accepts a node without entry phrases that an answer leads to', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': WITHOUT_ENTRY })).toEqual([])
  })

  it('accepts a node with entry phrases that no answer leads to', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('ragged holes: slime', 'ragged holes: underside') })).toEqual([])
  })

  it('accepts a node that only another host\'s tree leads to', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': cutOff,
      'hosts/rose.yaml': ROSE.replace('no: { hand over: "A rose has many troubles." }', 'no: { host: lettuce, node: slime }'),
    })).toEqual([])
  })

  it('points at a node that nothing leads to', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': cutOff })).toEqual([{ code: 'UNREACHABLE_NODE', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] }])
  })

  it('points also at a node that only an unreachable node leads to', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': (text) => `${cutOff(text).replace('no: { hand over: "Holes without slime have many causes." }', 'no: deeper')}  deeper:
    check: slime
    answers: { other answers: { hand over: "Too deep." } }\n` })).toEqual([
      { code: 'UNREACHABLE_NODE', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] },
      { code: 'UNREACHABLE_NODE', at: 'trees/hosts/lettuce.yaml:25:3', nearest: [] },
    ])
  })
})
