import { describe, expect, it } from 'vitest'
import { append, compileLettuce, warningsOf } from '../lettuce-world.js'

const showing = (shows: string) => (text: string) => text.replace(/shows:[^]*?advice:/, `shows: ${shows}\nadvice:`)
const ONE = '{ leaf-top: { brown edges: almost always } }'
const TWO = '{ leaf-top: { brown edges: almost always }, slime: { no: almost always } }'

describe('rule: a profile mentions at least two checks', () => {
  it('accepts two checks', () => {
    expect(warningsOf({ 'problems/tipburn.yaml': showing(TWO) })).toEqual([])
  })

  it.each([[ONE, 'one check'], ['{}', 'no check']])('points at the problem that shows %s', (shows, mentions) => {
    const { warnings } = compileLettuce({ 'problems/tipburn.yaml': showing(shows) })
    expect(warnings.map(({ code, message }) => ({ code, message }))).toEqual([
      { code: 'FEW_CHECKS', message: `The profile of "tipburn" mentions ${mentions}. Expected at least two.` },
    ])
  })

  it('reports every such profile, not only the first', () => {
    expect(warningsOf({ 'problems/tipburn.yaml': showing(ONE), 'problems/slugs.yaml': showing('{ slime: { yes: usually } }') })).toEqual([
      { code: 'FEW_CHECKS', at: 'trees/problems/slugs.yaml:1:10', nearest: [] },
      { code: 'FEW_CHECKS', at: 'trees/problems/tipburn.yaml:1:10', nearest: [] },
    ])
  })

  it('is silent where the problem accepts it with a reason', () => {
    expect(warningsOf({ 'problems/tipburn.yaml': (text) => append('accepts: [{ warning: FEW_CHECKS, because: one look is enough }]\n')(showing(ONE)(text)) })).toEqual([])
  })
})
