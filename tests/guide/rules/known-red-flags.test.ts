import { describe, expect, it } from 'vitest'
import { errorsOf, swap } from '../lettuce-world.js'

describe('rule: every red flag named exists', () => {
  it('accepts a red flag as the end of a worked case', () => {
    expect(errorsOf({ 'casebook/lettuce.yaml': swap('{ problem: downy-mildew }', '{ red flag: sap-on-skin }') })).toEqual([])
  })

  it('points at the answer and at the worked case that name a red flag without a file', () => {
    expect(errorsOf({
      'checks/leaf-underside.yaml': swap('sap-on-skin', 'sap-on-skn'),
      'casebook/lettuce.yaml': swap('{ problem: downy-mildew }', '{ red flag: skin }'),
    })).toEqual([
      { code: 'UNKNOWN_RED_FLAG', at: 'trees/casebook/lettuce.yaml:9:23', nearest: [] },
      { code: 'UNKNOWN_RED_FLAG', at: 'trees/checks/leaf-underside.yaml:8:30', nearest: ['sap-on-skin'] },
    ])
  })
})
