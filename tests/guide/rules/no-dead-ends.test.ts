import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf, swap } from '../lettuce-world.js'

describe('rule: no dead ends', () => {
  it('accepts branches that end in a problem, in a hand-over and in another node', () => {
    expect(errorsOf()).toEqual([])
  })

  it('points at the answer whose branch ends nowhere', () => {
    const changes = { 'hosts/lettuce.yaml': swap('ragged holes: slime', 'ragged holes:') }
    expect(errorsOf(changes)).toEqual([{ code: 'DEAD_END', at: 'trees/hosts/lettuce.yaml:11:7', nearest: [] }])
    expect(compileLettuce(changes).errors[0]?.message)
      .toBe('"ragged holes" at the node "top" leads nowhere. Expected a node, { problem: id }, { hand over: "why" } or { host: id }.')
  })

  it('reports every dead end, also at *not sure* and *other answers*, once each', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': (text) => text.replace('ragged holes: slime', 'ragged holes:').replace('not sure: underside', 'not sure:')
        .replace('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: ~'),
    })).toEqual([
      { code: 'DEAD_END', at: 'trees/hosts/lettuce.yaml:11:7', nearest: [] },
      { code: 'DEAD_END', at: 'trees/hosts/lettuce.yaml:13:5', nearest: [] },
      { code: 'DEAD_END', at: 'trees/hosts/lettuce.yaml:19:7', nearest: [] },
    ])
  })
})
