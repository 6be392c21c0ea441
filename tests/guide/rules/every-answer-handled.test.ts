import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf, swap } from '../lettuce-world.js'

describe('rule: every answer is handled', () => {
  it('accepts a node that names each answer, and one with *other answers*', () => {
    expect(errorsOf()).toEqual([])
  })

  it('points at the node and names the answers left open', () => {
    const changes = { 'hosts/lettuce.yaml': swap('      ragged holes: slime\n', '') }
    expect(errorsOf(changes)).toEqual([{ code: 'UNANSWERED', at: 'trees/hosts/lettuce.yaml:6:3', nearest: [] }])
    expect(compileLettuce(changes).errors[0]?.message)
      .toBe('The node "top" does not say where "ragged holes" of "leaf-top" leads. Expected a target for each answer, or for other answers.')
  })

  it('does not take *not sure* for an answer of the check', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('      no: { hand over: "Holes without slime have many causes." }\n', '    not sure: { hand over: "Nobody looked." }\n') }))
      .toEqual([{ code: 'UNANSWERED', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] }])
  })

  it('reports every such node with all its open answers', () => {
    const changes = {
      'hosts/lettuce.yaml': (text: string) => text.replace('      ragged holes: slime\n', '')
        .replace('      other answers: { hand over: "Pale patches without fuzz need a closer look." }\n', ''),
    }
    expect(errorsOf(changes)).toEqual([
      { code: 'UNANSWERED', at: 'trees/hosts/lettuce.yaml:6:3', nearest: [] },
      { code: 'UNANSWERED', at: 'trees/hosts/lettuce.yaml:13:3', nearest: [] },
    ])
    expect(compileLettuce(changes).errors[1]?.message).toContain('where "a burning sap", "nothing" of "leaf-underside" lead.')
  })
})
