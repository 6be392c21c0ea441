import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf, swap } from '../lettuce-world.js'

describe('rule: every answer named belongs to its check', () => {
  it.each(['not sure', '"can\'t look now"', 'yes'])('accepts %s in a worked case', (answer) => {
    expect(compileLettuce({ 'casebook/lettuce.yaml': (text) => `${text.replace('slime: not sure', `slime: ${answer}`)}# changed\n` }).errors).toEqual([])
  })

  it('points at an answer of a node that its check has not', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('white fuzz:', 'white fuz:') }))
      .toEqual([{ code: 'UNKNOWN_ANSWER', at: 'trees/hosts/lettuce.yaml:18:7', nearest: ['white fuzz'] }])
  })

  it('takes answers letter for letter', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('white fuzz:', 'White fuzz:') }))
      .toEqual([{ code: 'UNKNOWN_ANSWER', at: 'trees/hosts/lettuce.yaml:18:7', nearest: ['white fuzz'] }])
  })

  it('points at an answer of a profile that its check has not', () => {
    expect(errorsOf({ 'problems/downy-mildew.yaml': swap('slime: { no:', 'slime: { nope:') }))
      .toEqual([{ code: 'UNKNOWN_ANSWER', at: 'trees/problems/downy-mildew.yaml:10:12', nearest: ['no'] }])
  })

  it('points at the answer of a worked case, with the reserved answers among the near ones', () => {
    const changes = { 'casebook/lettuce.yaml': swap('slime: not sure', 'slime: not sur') }
    expect(errorsOf(changes)).toEqual([{ code: 'UNKNOWN_ANSWER', at: 'trees/casebook/lettuce.yaml:8:76', nearest: ['not sure'] }])
    expect(compileLettuce(changes).errors[0]?.message)
      .toBe('The check "slime" has no answer "not sur". Expected one of: "yes", "no", "not sure", "can\'t look now".')
  })

  it('refuses the reserved answers in trees and profiles', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': swap('      yes: {', '      not sure: underside\n      yes: {'),
      'problems/slugs.yaml': swap('yes: usually', 'yes: usually, not sure: rarely'),
    })).toEqual([
      { code: 'UNKNOWN_ANSWER', at: 'trees/hosts/lettuce.yaml:24:7', nearest: [] },
      { code: 'UNKNOWN_ANSWER', at: 'trees/problems/slugs.yaml:10:26', nearest: [] },
    ])
  })
})
