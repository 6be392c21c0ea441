import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { compileLettuce, errorsOf, lettuceText, ROSE, swap } from '../lettuce-world.js'

const SLUGGY_ROSE = ROSE.replace('yes: { hand over: "Slime on a rose is odd." }', 'yes: { problem: slugs }')

describe('rule: a tree concludes only problems of its host', () => {
  it('accepts a problem that lists both hosts', () => {
    expect(errorsOf({ 'hosts/rose.yaml': SLUGGY_ROSE, 'problems/slugs.yaml': swap('lettuce: common', 'lettuce: common, rose: rare') })).toEqual([])
  })

  it('points at the end that does not list the host, and at the problem', () => {
    const { errors } = compileLettuce({ 'hosts/rose.yaml': SLUGGY_ROSE })
    expect(errors.map(({ code, at }) => [code, ...at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))])).toEqual([
      ['NOT_ITS_PROBLEM', { file: 'trees/hosts/rose.yaml', line: 9, column: 23 }, { file: 'trees/problems/slugs.yaml', line: 1, column: 10 }],
    ])
  })

  it('suggests the host\'s own problem of a like name, and reports every such end', () => {
    const slug = lettuceText('problems/slugs.yaml').replace('problem: slugs', 'problem: slug').replace('lettuce: common', 'rose: common')
    expect(errorsOf({
      'problems/slug.yaml': slug,
      'hosts/rose.yaml': SLUGGY_ROSE.replace('no: { hand over: "A rose has many troubles." }', 'no: { problem: tipburn }\n    not sure: { problem: slug }'),
    })).toEqual([
      { code: 'NOT_ITS_PROBLEM', at: 'trees/hosts/rose.yaml:9:23', nearest: ['slug'] },
      { code: 'NOT_ITS_PROBLEM', at: 'trees/hosts/rose.yaml:10:22', nearest: [] },
    ])
  })
})
