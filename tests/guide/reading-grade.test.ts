import { describe, expect, it } from 'vitest'
import { readingGrade } from '../../src/guide/index.js'

describe('the reading grade of a text', () => {
  it('is 0 for a text without words', () => {
    expect(readingGrade('')).toBe(0)
    expect(readingGrade('... !')).toBe(0)
  })

  it('falls when a sentence is cut in two', () => {
    expect(readingGrade('Turn a leaf over. Look for white fuzz.')).toBeLessThan(readingGrade('Turn a leaf over and look for white fuzz.'))
  })

  it('rises with longer words', () => {
    expect(readingGrade('Remove necrotic vegetation.')).toBeGreaterThan(readingGrade('Cut off dead leaves.'))
  })

  it('does not end a sentence inside a number', () => {
    expect(readingGrade('Give it 2.5 litres of soft rain each week.')).toBe(readingGrade('Give it 2 5 litres of soft rain each week.'))
  })

  it('ends a sentence at a mark before a closing quote', () => {
    expect(readingGrade('The tag says “water me.” Give it a cup.')).toBe(readingGrade('The tag says water me. Give it a cup.'))
  })
})
