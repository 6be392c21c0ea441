import { describe, expect, it } from 'vitest'
import { errorsOf, swap } from '../lettuce-world.js'

describe('rule: every problem named exists', () => {
  it('accepts look-alikes and ends that have a file', () => {
    expect(errorsOf({
      'problems/tipburn.yaml': swap('advice:', 'look-alikes: [slugs]\nadvice:'),
      'casebook/lettuce.yaml': (text) => `${text}    also right: [tipburn]\n`,
    })).toEqual([])
  })

  it('points at a problem that a tree concludes and no file has', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('{ problem: tipburn }', '{ problem: tipbrun }') })).toEqual([
      { code: 'UNKNOWN_PROBLEM', at: 'trees/hosts/lettuce.yaml:12:31', nearest: ['tipburn'] },
      { code: 'PROBLEM_NOT_REACHED', at: 'trees/problems/tipburn.yaml:5:10', nearest: [] },
    ])
  })

  it('points at problems behind *other answers* and *not sure*', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': (text) => text.replace('not sure: underside', 'not sure: { problem: slug }')
        .replace('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: { problem: tipbur }'),
    })).toEqual([
      { code: 'UNKNOWN_PROBLEM', at: 'trees/hosts/lettuce.yaml:13:26', nearest: ['slugs'] },
      { code: 'UNKNOWN_PROBLEM', at: 'trees/hosts/lettuce.yaml:19:33', nearest: ['tipburn'] },
    ])
  })

  it('points at a look-alike that no file has', () => {
    expect(errorsOf({ 'problems/tipburn.yaml': swap('advice:', 'look-alikes: [slugs, slug]\nadvice:') }))
      .toEqual([{ code: 'UNKNOWN_PROBLEM', at: 'trees/problems/tipburn.yaml:11:22', nearest: ['slugs'] }])
  })

  it('points at both ends of a worked case that no file has', () => {
    expect(errorsOf({ 'casebook/lettuce.yaml': (text) => `${text.replace('ends: { problem: downy-mildew }', 'ends: { problem: downy-mildw }')}    also right: [slug]\n` }))
      .toEqual([
        { code: 'UNKNOWN_PROBLEM', at: 'trees/casebook/lettuce.yaml:9:22', nearest: ['downy-mildew'] },
        { code: 'UNKNOWN_PROBLEM', at: 'trees/casebook/lettuce.yaml:10:18', nearest: ['slugs'] },
      ])
  })
})
