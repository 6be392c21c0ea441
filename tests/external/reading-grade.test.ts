import { describe, expect, it } from 'vitest'
import { gradeFromCounts, readingGrade } from '../../src/guide/index.js'

/**
 * Flesch-Kincaid grade: 0.39 × words per sentence + 11.8 × syllables per word − 15.59 (Kincaid J.P. et al. 1975, Derivation of
 * new readability formulas, Navy research branch report 8-75; formula and citation from memory). The worked values are
 * computed from that formula by hand, not taken from a page.
 */
describe('the reading grade against the published formula', () => {
  it('is 9.91 for 100 words in 5 sentences with 150 syllables', () => {
    expect(gradeFromCounts(100, 5, 150)).toBeCloseTo(9.91, 10)
  })

  it('is −0.22 for a text of 14 words, 2 sentences and 15 syllables', () => {
    expect(gradeFromCounts(14, 2, 15)).toBeCloseTo(-0.217143, 6)
    expect(readingGrade('Water the plant once a week. Let the top inch of soil dry first.')).toBeCloseTo(-0.22, 2)
  })

  // https://pmc.ncbi.nlm.nih.gov/articles/PMC9971903/table/tbl2 prints the formula with its two ratios swapped;
  // that reading would call 100 words in 5 sentences with 150 syllables grade 221.
  it('does not fall for the misprint that swaps the two ratios', () => {
    const misprinted = 0.39 * (150 / 100) + 11.8 * (100 / 5) - 15.59
    expect(misprinted).toBeCloseTo(220.995, 10)
    expect(gradeFromCounts(100, 5, 150)).not.toBeCloseTo(misprinted, 0)
  })

  it('weighs a longer sentence and a longer word as the formula does', () => {
    expect(gradeFromCounts(100, 4, 150) - gradeFromCounts(100, 5, 150)).toBeCloseTo(0.39 * 5, 10)
    expect(gradeFromCounts(100, 5, 160) - gradeFromCounts(100, 5, 150)).toBeCloseTo(11.8 * 0.1, 10)
  })
})
