import { describe, expect, it } from 'vitest'
import { readingGrade } from '../../src/guide/reading-grade.js'
import { enSheet } from '../../src/web/wording/en-sheet.js'
import { en } from '../../src/web/wording/en.js'

describe('the panel’s own words', () => {
  it('read at grade 8 or below, each of them', () => {
    const hard = sentences([en, enSheet]).filter(text => text.split(/\s+/).length >= 4 && readingGrade(text) > 8)
    expect(hard).toEqual([])
  })

  it('never call a plant safe; of people they may say it', () => {
    expect(sentences([en, enSheet]).filter(text => /(?<!\beveryone is )\bsafe\b|\bharmless\b|\bedible\b/i.test(text))).toEqual([])
  })
})

/** Every text of the wording; those made from a value are made with a plausible one. */
function sentences(part: unknown): string[] {
  if (typeof part === 'string') return [part]
  if (typeof part === 'function') return [String(part('2', 'yes'))]
  if (typeof part === 'object' && part !== null) return Object.values(part).flatMap(sentences)
  return []
}
