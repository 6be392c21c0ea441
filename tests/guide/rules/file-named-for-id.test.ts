import { describe, expect, it } from 'vitest'
import { errorsOf, lettuceText } from '../lettuce-world.js'

describe('rule: a file is named for the id inside it', () => {
  it('accepts files that are named for their id', () => {
    expect(errorsOf()).toEqual([])
  })

  it('accepts the ending .yml', () => {
    expect(errorsOf({ 'checks/slime.yaml': null, 'checks/slime.yml': lettuceText('checks/slime.yaml') })).toEqual([])
  })

  it('leaves the name of a casebook file to its author', () => {
    expect(errorsOf({ 'casebook/lettuce.yaml': null, 'casebook/spring.yaml': lettuceText('casebook/lettuce.yaml') })).toEqual([])
  })

  it('points at the id in every file that is named otherwise', () => {
    expect(errorsOf({
      'checks/slime.yaml': null, 'checks/slim.yaml': lettuceText('checks/slime.yaml'),
      'hosts/lettuce.yaml': null, 'hosts/salad.yaml': lettuceText('hosts/lettuce.yaml'),
      'problems/slugs.yaml': null, 'problems/snails.yaml': lettuceText('problems/slugs.yaml'),
      'red-flags/sap-on-skin.yaml': null, 'red-flags/sap.yaml': lettuceText('red-flags/sap-on-skin.yaml'),
    })).toEqual([
      { code: 'FILE_NAME', at: 'trees/checks/slim.yaml:1:8', nearest: [] },
      { code: 'FILE_NAME', at: 'trees/hosts/salad.yaml:1:7', nearest: [] },
      { code: 'FILE_NAME', at: 'trees/problems/snails.yaml:1:10', nearest: [] },
      { code: 'FILE_NAME', at: 'trees/red-flags/sap.yaml:1:11', nearest: [] },
    ])
  })
})
