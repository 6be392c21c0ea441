import { describe, expect, it } from 'vitest'
import { linearDraws, readSoybeans, spoil, splitInTen } from './cases.js'

// Check values of the split rule that goes with the data (computed by its author, independently of this code).
describe('the soybean cases', () => {
  const cases = readSoybeans()

  it('are 683 of 19 problems with 35 checks, 2337 cells not recorded', () => {
    expect(cases.cells.length).toBe(683)
    expect(new Set(cases.problems).size).toBe(19)
    expect(cases.cells.every((row) => row.length === 35)).toBe(true)
    expect(cases.cells.reduce((sum, row) => sum + row.filter((cell) => cell < 0).length, 0)).toBe(2337)
  })

  it('are split by the published rule', () => {
    const draw = linearDraws(1980)
    expect([draw(), draw(), draw()].map((u) => u.toFixed(10))).toEqual(['0.0034217786', '0.8720219317', '0.5419129927'])
    const parts = splitInTen(cases, 1980)
    expect(Array.from(parts.slice(0, 20))).toEqual([3, 2, 9, 2, 5, 9, 0, 5, 3, 0, 1, 5, 4, 0, 6, 7, 2, 0, 3, 8])
    expect(Array.from({ length: 10 }, (_, part) => parts.filter((one) => one === part).length)).toEqual([69, 69, 69, 68, 68, 68, 68, 68, 68, 68])
  })

  it('are spoiled by the published rule', () => {
    const count = (unsure: number, wrong: number) => {
      const spoilt = spoil(cases, 101, unsure, wrong)
      let lost = 0
      let changed = 0
      cases.cells.forEach((row, place) => row.forEach((cell, check) => {
        const now = spoilt[place]?.[check] ?? -1
        if (cell >= 0 && now < 0) lost += 1
        else if (cell >= 0 && now !== cell) changed += 1
      }))
      return { lost, changed }
    }
    expect(count(0.2, 0)).toEqual({ lost: 4251, changed: 0 })
    expect(count(0, 0.05)).toEqual({ lost: 0, changed: 1080 })
    expect(count(0.2, 0.05)).toEqual({ lost: 4260, changed: 861 })
  })
})
