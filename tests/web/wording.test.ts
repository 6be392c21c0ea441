import { describe, expect, it } from 'vitest'
import { readingGrade } from '../../src/guide/reading-grade.js'
import { LOWEST_SPANISH_EASE, spanishEase } from '../../src/guide/translation/spanish-ease.js'
import { enSheet } from '../../src/web/wording/en-sheet.js'
import { en } from '../../src/web/wording/en.js'
import { es as esDesk } from '../../src/desk/wording/es.js'
import { esPlain } from '../../src/web/wording/es-plain.js'
import { esSheet } from '../../src/web/wording/es-sheet.js'
import { es } from '../../src/web/wording/es.js'

describe('the panel’s own words', () => {
  it('read at grade 8 or below, each of them', () => {
    const hard = sentences([en, enSheet]).filter(text => text.split(/\s+/).length >= 4 && readingGrade(text) > 8)
    expect(hard).toEqual([])
  })

  it('read fairly easily in Spanish, and none worse than normal', () => {
    const all = sentences([es, esSheet, esPlain, esDesk])
    expect(spanishEase(all.map(text => `${text.replace(/[.:]$/, '')}.`).join(' '))).toBeGreaterThanOrEqual(LOWEST_SPANISH_EASE)
    // 55 is where 'normal' begins on the same scale. Of a few words one long one decides, and 'especialista' has no short form.
    expect(all.filter(text => text.split(/\s+/).length >= 10 && spanishEase(text) < 55)).toEqual([])
  })

  it('never call a plant safe; of people they may say it', () => {
    expect(sentences([en, enSheet]).filter(text => /(?<!\beveryone is )\bsafe\b|\bharmless\b|\bedible\b/i.test(text))).toEqual([])
    expect(sentences([es, esSheet, esPlain, esDesk]).filter(text => /\bsegur[ao]s? para\b|\binofensiv|\bcomestible/i.test(text))).toEqual([])
  })
})

/** Every text of the wording; those made from a value are made with a plausible one. */
function sentences(part: unknown): string[] {
  if (typeof part === 'string') return [part]
  if (typeof part === 'function') return [String(part('2', 'yes'))]
  if (typeof part === 'object' && part !== null) return Object.values(part).flatMap(sentences)
  return []
}
