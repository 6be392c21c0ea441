import { describe, expect, it } from 'vitest'
import { errorsOf, ROSE, swap } from '../lettuce-world.js'

const TO_ANOTHER_TREE = swap('no: { hand over: "Holes without slime have many causes." }', 'no: { host: rose }')

describe('rule: every host named exists', () => {
  it('accepts a way to another host\'s tree', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': TO_ANOTHER_TREE, 'hosts/rose.yaml': ROSE })).toEqual([])
  })

  it('points at a host that a problem lists and no file has', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('lettuce: common', 'lettuce: common, letuce: rare') }))
      .toEqual([{ code: 'UNKNOWN_HOST', at: 'trees/problems/slugs.yaml:5:27', nearest: ['lettuce'] }])
  })

  it('points at a problem that lists no host', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('{ lettuce: common }', '{}') })).toEqual([
      { code: 'NOT_ITS_PROBLEM', at: 'trees/hosts/lettuce.yaml:24:23', nearest: [] },
      { code: 'SHAPE', at: 'trees/problems/slugs.yaml:1:10', nearest: [] },
    ])
  })

  it('points at a host that a tree leads to and no file has', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('no: { hand over: "Holes without slime have many causes." }', 'no: { host: roze }'), 'hosts/rose.yaml': ROSE }))
      .toEqual([{ code: 'UNKNOWN_HOST', at: 'trees/hosts/lettuce.yaml:25:19', nearest: ['rose'] }])
  })

  it('points at a host that a red flag leads to and no file has', () => {
    expect(errorsOf({ 'red-flags/sap-on-skin.yaml': swap('then: carry on', 'then: carry on\nafterwards: { host: letuce, node: top, offer: Which plant it was }') }))
      .toEqual([{ code: 'UNKNOWN_HOST', at: 'trees/red-flags/sap-on-skin.yaml:8:21', nearest: ['lettuce'] }])
  })

  it('points at the host of a worked case that no file has, beside every other', () => {
    expect(errorsOf({
      'casebook/lettuce.yaml': swap('host: lettuce', 'host: lettuces'),
      'problems/slugs.yaml': swap('lettuce: common', 'lettuce: common, letuce: rare'),
    })).toEqual([
      { code: 'UNKNOWN_HOST', at: 'trees/casebook/lettuce.yaml:7:11', nearest: ['lettuce'] },
      { code: 'UNKNOWN_HOST', at: 'trees/problems/slugs.yaml:5:27', nearest: ['lettuce'] },
    ])
  })
})
