import { describe, expect, it } from 'vitest'
import { errorsOf, ROSE, swap } from '../lettuce-world.js'

describe('rule: every node named exists', () => {
  it('accepts a way to a node of the own tree and of another', () => {
    expect(errorsOf({ 'hosts/rose.yaml': ROSE.replace('no: { hand over: "A rose has many troubles." }', 'no: { host: lettuce, node: slime }') })).toEqual([])
  })

  it('points at a start that is no node', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('start: top', 'start: tpo') }))
      .toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:4:8', nearest: ['top'] }])
  })

  it('points at where *not sure* leads', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('not sure: underside', 'not sure: undersid') }))
      .toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:13:15', nearest: ['underside'] }])
  })

  it('points once at where *other answers* lead, though two answers go there', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slmie') }))
      .toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:19:22', nearest: ['slime'] }])
  })

  it('points at where *other answers* lead even when every answer is named', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('many causes." }\n', 'many causes." }\n      other answers: underside-of\n') }))
      .toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:26:22', nearest: ['underside'] }])
  })

  it('looks for a node of another host in that host\'s tree', () => {
    expect(errorsOf({ 'hosts/rose.yaml': ROSE.replace('no: { hand over: "A rose has many troubles." }', 'no: { host: lettuce, node: dawn }') }))
      .toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/rose.yaml:10:34', nearest: [] }])
  })

  it('looks for the place that a red flag leads to in that host\'s tree', () => {
    const leading = (node: string) => errorsOf({ 'red-flags/sap-on-skin.yaml': swap('then: carry on', `then: carry on\nafterwards: { host: lettuce, node: ${node}, offer: Which plant it was }`) })
    expect(leading('slime')).toEqual([])
    expect(leading('slmie')).toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/red-flags/sap-on-skin.yaml:8:36', nearest: ['slime'] }])
  })

  it('reports every unknown node, not only the first', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': (text) => text.replace('holes: slime', 'holes: slmie').replace('not sure: underside', 'not sure: undersid') }))
      .toEqual([
        { code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:11:21', nearest: ['slime'] },
        { code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:13:15', nearest: ['underside'] },
      ])
  })
})
