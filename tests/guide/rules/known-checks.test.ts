import { describe, expect, it } from 'vitest'
import { errorsOf, swap } from '../lettuce-world.js'

describe('rule: every check named exists', () => {
  it('accepts checks that have a file', () => {
    expect(errorsOf()).toEqual([])
  })

  it('points at a check that a node asks and no file has', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('check: slime', 'check: slmie') }))
      .toEqual([{ code: 'UNKNOWN_CHECK', at: 'trees/hosts/lettuce.yaml:22:12', nearest: ['slime'] }])
  })

  it('points at a check that a profile mentions and no file has', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('  slime:', '  slimy:') }))
      .toEqual([{ code: 'UNKNOWN_CHECK', at: 'trees/problems/slugs.yaml:10:3', nearest: ['slime'] }])
  })

  it('points at a check that a worked case answers and no file has', () => {
    expect(errorsOf({ 'casebook/lettuce.yaml': swap('slime: not sure', 'slim: not sure') }))
      .toEqual([{ code: 'UNKNOWN_CHECK', at: 'trees/casebook/lettuce.yaml:8:69', nearest: ['slime'] }])
  })

  it('suggests nothing when no name is near', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': swap('check: slime', 'check: weather-station') }))
      .toEqual([{ code: 'UNKNOWN_CHECK', at: 'trees/hosts/lettuce.yaml:22:12', nearest: [] }])
  })

  it('reports every unknown check, not only the first', () => {
    expect(errorsOf({
      'hosts/lettuce.yaml': swap('check: slime', 'check: slmie'),
      'problems/slugs.yaml': swap('  slime:', '  slimy:'),
      'problems/tipburn.yaml': swap('  leaf-top:', '  leaf-tops:'),
    })).toEqual([
      { code: 'UNKNOWN_CHECK', at: 'trees/hosts/lettuce.yaml:22:12', nearest: ['slime'] },
      { code: 'UNKNOWN_CHECK', at: 'trees/problems/slugs.yaml:10:3', nearest: ['slime'] },
      { code: 'UNKNOWN_CHECK', at: 'trees/problems/tipburn.yaml:8:3', nearest: ['leaf-top'] },
    ])
  })
})
