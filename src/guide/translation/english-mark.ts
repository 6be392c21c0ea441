import { createHash } from 'node:crypto'

/** Letters that stand for the sixteen half-bytes: without vowels no mark reads as a word, a number or a YAML literal. */
const LETTERS = 'bcdfghjklmnpqrst'
const LENGTH = 6

/**
 * A short mark of an English text, or of a list of them, by which a translation says what it was made from. The same
 * words give the same mark whatever their line breaks.
 * @returns six letters: the first 24 bits of the SHA-256 of the words in NFC with runs of white space made one space
 */
export function englishMark(texts: readonly string[]): string {
  const plain = texts.map((text) => text.normalize('NFC').replace(/\s+/gu, ' ').trim()).join('\n')
  const digits = createHash('sha256').update(plain).digest('hex').slice(0, LENGTH)
  return [...digits].map((digit) => LETTERS.charAt(Number.parseInt(digit, 16))).join('')
}
