import { describe, expect, it } from 'vitest'
import { errorsOf, swap } from '../lettuce-world.js'

const changes = {
  'red-flags/sap-on-skin.yaml': swap('call: [poison line]', 'call: [emergency, poison lin]'),
  'casebook/lettuce.yaml': swap('district: eastmere', 'district: eastmeer'),
}

describe('rule: numbers and districts stand in region.yaml', () => {
  it('accepts several numbers to call and a case without a district', () => {
    expect(errorsOf({
      'red-flags/sap-on-skin.yaml': swap('call: [poison line]', 'call: [emergency, poison line]'),
      'casebook/lettuce.yaml': swap('    district: eastmere\n', ''),
    })).toEqual([])
  })

  it('points at the number to call and at the district that the region has not', () => {
    expect(errorsOf(changes)).toEqual([
      { code: 'UNKNOWN_DISTRICT', at: 'trees/casebook/lettuce.yaml:6:15', nearest: ['eastmere'] },
      { code: 'UNKNOWN_NUMBER', at: 'trees/red-flags/sap-on-skin.yaml:6:69', nearest: ['poison line'] },
    ])
  })

  it('says only that the region is missing when it is', () => {
    expect(errorsOf({ ...changes, 'region.yaml': null })).toEqual([{ code: 'NO_REGION', at: 'trees/checks/leaf-top.yaml:1:1', nearest: [] }])
  })
})
