import { spanishSyllables } from './spanish-syllables.js'

/**
 * Where "bastante fácil" (fairly easy) begins on the INFLESZ scale (Barrio-Cantalejo et al. 2008, An. Sist. Sanit. Navar.
 * 31(2):135-152): up to 40 very hard, 40-55 rather hard, 55-65 normal, 65-80 fairly easy, above 80 very easy.
 */
export const LOWEST_SPANISH_EASE = 65

/**
 * How easily a Spanish text reads: the index of Szigriszt-Pazos (1993, doctoral thesis, Universidad Complutense de
 * Madrid), 206.835 − 62.3 × syllables per word − words per sentence. Higher is easier; 100 for a text without words.
 */
export function spanishEase(text: string): number {
  const sentences = Math.max(1, text.split(/[.!?…]+["'”’»)\]]*(?:\s|$)/).filter((part) => /\p{L}/u.test(part)).length)
  const words = text.match(/[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu) ?? []
  if (words.length === 0) return 100
  return spanishEaseFromCounts(words.length, sentences, words.reduce((sum, word) => sum + spanishSyllables(word), 0))
}

/** The formula of Szigriszt-Pazos itself, from counts. */
export function spanishEaseFromCounts(words: number, sentences: number, syllables: number): number {
  return 206.835 - 62.3 * (syllables / words) - words / sentences
}
