import { describe, expect, it } from 'vitest'
import { SPARE_CHECK, swap, warningsOf } from '../lettuce-world.js'

describe('rule: no unused checks', () => {
  it('accepts a check that only a profile mentions', () => {
    expect(warningsOf({ 'checks/spare.yaml': SPARE_CHECK, 'problems/slugs.yaml': swap('  slime:', '  spare: { damp: often }\n  slime:') })).toEqual([])
  })

  it('accepts a check that only a tree asks', () => {
    expect(warningsOf({
      'checks/spare.yaml': SPARE_CHECK,
      'hosts/lettuce.yaml': swap('no: { hand over: "Holes without slime have many causes." }', 'no: soil\n  soil:\n    check: spare\n    answers: { other answers: { hand over: "Damp or dry." } }'),
    })).toEqual([])
  })

  it('points at every check that nothing asks or mentions', () => {
    expect(warningsOf({ 'checks/spare.yaml': SPARE_CHECK, 'checks/another.yaml': SPARE_CHECK.replace('check: spare', 'check: another') })).toEqual([
      { code: 'UNUSED_CHECK', at: 'trees/checks/another.yaml:1:8', nearest: [] },
      { code: 'UNUSED_CHECK', at: 'trees/checks/spare.yaml:1:8', nearest: [] },
    ])
  })

  it('is silent where the check accepts it with a reason', () => {
    expect(warningsOf({ 'checks/spare.yaml': `${SPARE_CHECK}accepts: [{ warning: UNUSED_CHECK, because: a tree will ask it soon }]\n` })).toEqual([])
  })
})
