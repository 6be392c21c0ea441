import { describe, expect, it } from 'vitest'
import { LOWEST_SPANISH_EASE, spanishEase, spanishEaseFromCounts, spanishSyllables } from '../../src/guide/index.js'

/**
 * Index of Szigriszt-Pazos: 206.835 − 62.3 × syllables / words − words / sentences, as printed at
 * https://legible.es/blog/perspicuidad-szigriszt-pazos/ (after F. Szigriszt Pazos 1993, doctoral thesis). The worked values
 * are computed from that formula by hand.
 */
describe('the Spanish reading ease against the published formula', () => {
  it('is 58.497 for 100 words in 5 sentences with 206 syllables', () => {
    expect(spanishEaseFromCounts(100, 5, 206)).toBeCloseTo(206.835 - 128.338 - 20, 10)
  })

  it('counts words, sentences and syllables as a reader would', () => {
    // Rie-gue la plan-ta u-na vez por se-ma-na: 2 + 1 + 2 + 2 + 1 + 1 + 3 = 12 syllables in 7 words.
    expect(spanishEase('Riegue la planta una vez por semana.')).toBeCloseTo(206.835 - 62.3 * 12 / 7 - 7, 10)
  })

  // INFLESZ scale as printed at https://cnbguatemala.org/index.php?title=Legible/Escala_Inflesz (after Barrio-Cantalejo et al. 2008,
  // An. Sist. Sanit. Navar. 31(2):135-152): 0-40 muy difícil, 40-55 algo difícil, 55-65 normal, 65-80 bastante fácil, 80-100 muy fácil.
  it('asks for "bastante fácil", which begins at 65', () => {
    expect(LOWEST_SPANISH_EASE).toBe(65)
  })
})

/**
 * Syllables as divided by the Real Academia Española (Ortografía de la lengua española, 2010; examples from memory): diphthongs
 * cie-lo, cau-sa, ciu-dad; hiatus ca-er, pa-ís, dí-a; triphthong a-ve-ri-guáis; silent u in gue-rra, que-so; sounded ü in ver-güen-za.
 */
describe('Spanish syllables against the rule of the Academy', () => {
  it.each([
    ['cielo', 2], ['causa', 2], ['ciudad', 2], ['caer', 2], ['país', 2], ['día', 2], ['averiguáis', 4], ['guerra', 2], ['queso', 2],
    ['vergüenza', 3], ['ley', 1], ['y', 1], ['hoja', 2], ['raíz', 2], ['raíces', 3], ['agua', 2], ['prohibido', 3], ['oían', 3], ['mayo', 2], ['enfermedad', 4],
  ])('counts the syllables of %s as %i', (word, syllables) => {
    expect(spanishSyllables(word)).toBe(syllables)
  })
})
