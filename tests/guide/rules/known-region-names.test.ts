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

  it('accepts districts that lie beside each other', () => {
    expect(errorsOf({ 'region.yaml': swap('numbers:\n', 'beside: { eastmere: [holt-fen] }\nnumbers:\n') })).toEqual([])
  })

  it('points at a district that lies beside no district, beside itself, or is none', () => {
    expect(errorsOf({ 'region.yaml': swap('numbers:\n', 'beside: { eastmere: [eastmere, holt-fin], upper-carse: [holt-fen] }\nnumbers:\n') })).toEqual([
      { code: 'UNKNOWN_DISTRICT', at: 'trees/region.yaml:8:22', nearest: [] },
      { code: 'UNKNOWN_DISTRICT', at: 'trees/region.yaml:8:32', nearest: ['holt-fen'] },
      { code: 'UNKNOWN_DISTRICT', at: 'trees/region.yaml:8:43', nearest: [] },
    ])
  })

  it('says only that the region is missing when it is', () => {
    expect(errorsOf({ ...changes, 'region.yaml': null })).toEqual([{ code: 'NO_REGION', at: 'trees/checks/leaf-top.yaml:1:1', nearest: [] }])
  })
})
