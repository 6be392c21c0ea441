import { describe, expect, it } from 'vitest'
import { append, errorsOf } from '../lettuce-world.js'

const accepting = (warning: string) => append(`accepts: [{ warning: ${warning}, because: it is so }]\n`)

describe('rule: an accepted warning exists', () => {
  it('accepts every kind of file accepting a warning that exists', () => {
    expect(errorsOf({
      'checks/slime.yaml': accepting('UNUSED_CHECK'), 'hosts/lettuce.yaml': accepting('PATH_LENGTH'),
      'problems/slugs.yaml': accepting('OLD_REVIEW'), 'red-flags/sap-on-skin.yaml': accepting('READING_GRADE'),
    })).toEqual([])
  })

  it('points at an unknown warning in every kind of file', () => {
    expect(errorsOf({
      'checks/slime.yaml': accepting('UNUSED_CHECKS'), 'hosts/lettuce.yaml': accepting('path_length'),
      'problems/slugs.yaml': accepting('OLD_REVEW'), 'red-flags/sap-on-skin.yaml': accepting('GRADE'),
    })).toEqual([
      { code: 'UNKNOWN_WARNING', at: 'trees/checks/slime.yaml:7:22', nearest: ['UNUSED_CHECK'] },
      { code: 'UNKNOWN_WARNING', at: 'trees/hosts/lettuce.yaml:26:22', nearest: ['PATH_LENGTH'] },
      { code: 'UNKNOWN_WARNING', at: 'trees/problems/slugs.yaml:17:22', nearest: ['OLD_REVIEW'] },
      { code: 'UNKNOWN_WARNING', at: 'trees/red-flags/sap-on-skin.yaml:10:22', nearest: [] },
    ])
  })

  it('does not let a file accept an error', () => {
    expect(errorsOf({ 'hosts/lettuce.yaml': accepting('DEAD_END') }))
      .toEqual([{ code: 'UNKNOWN_WARNING', at: 'trees/hosts/lettuce.yaml:26:22', nearest: [] }])
  })

  it('does not accept a warning without a reason', () => {
    expect(errorsOf({ 'red-flags/sap-on-skin.yaml': append('accepts: [{ warning: READING_GRADE }]\n') }).map(({ code, at }) => `${code} ${at}`))
      .toContain('SHAPE trees/red-flags/sap-on-skin.yaml:10:11')
  })
})
