import { describe, expect, it } from 'vitest'
import { errorsOf, SPARE_CHECK, swap } from '../lettuce-world.js'

describe('rule: reserved answers and the number of answers', () => {
  it('accepts 2 and 6 answers of the check\'s own', () => {
    expect(errorsOf({ 'checks/spare.yaml': SPARE_CHECK })).toEqual([])
    expect(errorsOf({ 'checks/spare.yaml': SPARE_CHECK.replace('dry: {}', 'dry: {}, c: {}, d: {}, e: {}, f: {}') })).toEqual([])
  })

  it('points at each reserved answer that a check lists', () => {
    expect(errorsOf({
      'checks/leaf-underside.yaml': swap('  nothing: {}\n', '  nothing: {}\n  not sure: {}\n  can\'t look now: {}\n  other answers: {}\n'),
    })).toEqual([
      { code: 'RESERVED_ANSWER', at: 'trees/checks/leaf-underside.yaml:10:3', nearest: [] },
      { code: 'RESERVED_ANSWER', at: 'trees/checks/leaf-underside.yaml:11:3', nearest: [] },
      { code: 'RESERVED_ANSWER', at: 'trees/checks/leaf-underside.yaml:12:3', nearest: [] },
    ])
  })

  it.each([
    ['no', 'answers: {}'],
    ['one', 'answers: { damp: {} }'],
    ['seven', 'answers: { a: {}, b: {}, c: {}, d: {}, e: {}, f: {}, g: {} }'],
  ])('points at a check with %s answers', (_number, answers) => {
    expect(errorsOf({ 'checks/spare.yaml': SPARE_CHECK.replace('answers: { damp: {}, dry: {} }', answers) }))
      .toEqual([{ code: 'SHAPE', at: 'trees/checks/spare.yaml:1:8', nearest: [] }])
  })
})
