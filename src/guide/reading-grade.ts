import { syllable } from 'syllable'

/**
 * Flesch-Kincaid grade of an English text: 0.39 × words per sentence + 11.8 × syllables per word − 15.59
 * (Kincaid et al. 1975, Navy report; formula from memory). Syllables are counted by the `syllable` library.
 * @returns the grade, which may be below 0 for very plain text; 0 for a text without words
 */
export function readingGrade(text: string): number {
  const sentences = Math.max(1, text.split(/[.!?]+["'”’)\]]*(?:\s|$)/).filter((part) => /\p{L}/u.test(part)).length)
  const words = text.match(/[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu) ?? []
  if (words.length === 0) return 0
  const syllables = words.reduce((sum, word) => sum + Math.max(1, syllable(word)), 0)
  return gradeFromCounts(words.length, sentences, syllables)
}

/** The Flesch-Kincaid formula itself, from counts. */
export function gradeFromCounts(words: number, sentences: number, syllables: number): number {
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59
}
