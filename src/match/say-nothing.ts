import { speechIn } from './languages/index.js'
import { tokenize } from './tokens.js'

/**
 * Whether none of these words says anything of a plant or its trouble by itself: 'is the', 'tienen'.
 * @param language of the one who said them, a BCP 47 tag
 */
export function sayNothing(words: string, language = 'en'): boolean {
  const { stopWords } = speechIn(language)
  return tokenize(words).every(({ text }) => text.length < 2 || stopWords.has(text))
}
