import { describe, expect, it } from 'vitest'
import { tomatoSeverity } from '../../../src/season/index.js'

describe('daily severity values of leaf blights of tomato', () => {
  // Madden, Pennypacker & MacNab 1978, Phytopathology 68:1354-1358. The hours are from memory; they were compared on
  // 28 November 2026 with the source of the model ALTERNARIA of the Norwegian Institute of Bioeconomy Research, which cites the
  // same paper and has the same hours and the same bands without gaps.
  it.each([
    // Mean °C, then [from, to] hours of 0, 1, 2, 3 and 4.
    [13, [[0, 6], [7, 15], [16, 20], [21, 24]]], [17, [[0, 6], [7, 15], [16, 20], [21, 24]]],
    [18, [[0, 3], [4, 8], [9, 15], [16, 22], [23, 24]]], [20, [[0, 3], [4, 8], [9, 15], [16, 22], [23, 24]]],
    [21, [[0, 2], [3, 5], [6, 12], [13, 20], [21, 24]]], [25, [[0, 2], [3, 5], [6, 12], [13, 20], [21, 24]]],
    [26, [[0, 3], [4, 8], [9, 15], [16, 22], [23, 24]]], [29, [[0, 3], [4, 8], [9, 15], [16, 22], [23, 24]]],
  ] as const)('are those of the table at %i °C', (celsius, ranges) => {
    ranges.forEach(([from, to], value) => {
      for (let hours = from; hours <= to; hours++) expect(tomatoSeverity(celsius, hours), `${hours} h`).toBe(value)
    })
  })

  // Pennsylvania State University Extension 2012: values run from 0 to 4, temperatures from 13 to 29 °C.
  it('are 0 outside 13 to 29 °C', () => {
    expect([12.9, 30, 35].map((celsius) => tomatoSeverity(celsius, 24))).toEqual([0, 0, 0])
    expect(tomatoSeverity(null, 0)).toBe(0)
  })
})
