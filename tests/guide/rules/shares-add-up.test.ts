import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf, swap } from '../lettuce-world.js'

describe('rule: shares of one check add up', () => {
  it('accepts words that add up to 125 %', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('no: sometimes', 'no: as often as not') })).toEqual([])
  })

  it('points at the check whose words add up to 133 %', () => {
    const changes = { 'problems/slugs.yaml': swap('yes: usually, no: sometimes', 'yes: very often, no: as often as not') }
    expect(errorsOf(changes)).toEqual([{ code: 'SHARES_TOO_LARGE', at: 'trees/problems/slugs.yaml:10:3', nearest: [] }])
    expect(compileLettuce(changes).errors[0]?.message)
      .toBe('The answers of "slime" add up to 133 %. Expected about 100 %, since only one answer is given: choose rarer words.')
  })

  it('reports every such check of every profile', () => {
    expect(errorsOf({
      'problems/slugs.yaml': (text) => text.replace('no: sometimes', 'no: usually').replace('nothing: almost always', 'nothing: often, white fuzz: often'),
      'problems/tipburn.yaml': swap('no: almost always', 'no: always, yes: always'),
    })).toEqual([
      { code: 'SHARES_TOO_LARGE', at: 'trees/problems/slugs.yaml:9:3', nearest: [] },
      { code: 'SHARES_TOO_LARGE', at: 'trees/problems/slugs.yaml:10:3', nearest: [] },
      { code: 'SHARES_TOO_LARGE', at: 'trees/problems/tipburn.yaml:10:3', nearest: [] },
    ])
  })
})
