import { describe, expect, it } from 'vitest'
import { risePlan, unusualRise } from '../../../src/season/index.js'
import { byWeek } from './by-week.js'

describe('an unusual rise', () => {
  it('is not spoken of with fewer than nine weeks on record', () => {
    expect(unusualRise(byWeek([['2026-W09', 30]]), risePlan('2026-W09', '2026-W01'))).toMatchObject({ method: null, isUnusual: false, limit: null })
    expect(unusualRise(byWeek([['2026-W10', 30]]), risePlan('2026-W10', '2026-W01'))).toMatchObject({ method: 'C2', isUnusual: true })
  })

  it('needs two reports, whatever the baseline', () => {
    expect(unusualRise(byWeek([['2026-W20', 1]]), risePlan('2026-W20', '2026-W01')).isUnusual).toBe(false)
    expect(unusualRise(byWeek([['2026-W20', 2]]), risePlan('2026-W20', '2026-W01')).isUnusual).toBe(true)
  })

  it('is judged by historical limits only once the records hold the whole of five years', () => {
    // The oldest week needed is eleven weeks before week 30 of the fifth year back: four weeks, and the four before.
    expect(unusualRise(byWeek([]), risePlan('2026-W30', '2021-W24'))).toMatchObject({ method: 'C2', years: 4 })
    expect(unusualRise(byWeek([]), risePlan('2026-W30', '2021-W23'))).toMatchObject({ method: 'historical limits', years: 5 })
  })
})
