import type { HeardWords } from './matched.js'

/** One word of a text: folded for comparing, with its place in the original for quoting. */
export interface Token {
  /** Lower case, no accents, no apostrophes: `Didn’t` is `didnt`. Never empty. */
  readonly text: string
  /** Offset of the first character in the original, in UTF-16 units. */
  readonly at: number
  /** Offset just past the last character. */
  readonly end: number
  /** Other words that it may stand for where dangers are listened for: misspelled, or in another number. */
  readonly also?: readonly string[]
}

/**
 * Splits a text into folded words, in order.
 * Hyphens, slashes and all other punctuation part words; apostrophes do not.
 * `atMost` caps how many words are read.
 */
export function tokenize(text: string, atMost = Number.POSITIVE_INFINITY): readonly Token[] {
  const tokens: Token[] = []
  for (const found of text.matchAll(WORD)) {
    if (tokens.length >= atMost) break
    // "The dog wee'd" is no weed, and "she'd" no shed.
    const folded = fold(found[0].replace(WOULD, ''))
    if (folded !== '') tokens.push({ text: folded, at: found.index, end: found.index + found[0].length })
  }
  return tokens
}

/** Folds one word: case, accents, ligatures, apostrophes and invisible joiners no longer matter. */
export function fold(word: string): string {
  if (PLAIN.test(word)) return word.toLowerCase()
  // Upper before lower, so that ß meets SS and the dotless i meets I; the second pass catches marks that casing adds.
  return word.normalize('NFKD').toUpperCase().toLowerCase().normalize('NFKD').replace(/ς/gu, 'σ').replace(NOT_IN_WORD, '')
}

/** The asker's own words from token `first` to token `last`, both included. */
export function quote(text: string, tokens: readonly Token[], first: number, last: number): HeardWords {
  const start = tokens[first]
  const stop = tokens[last]
  if (start === undefined || stop === undefined) {
    throw new RangeError(`No words stand at ${first} to ${last} of ${tokens.length}.`)
  }
  return { text: text.slice(start.at, stop.end), at: start.at }
}

// Soft hyphens and zero-width joiners come along with text copied from web pages; they do not part a word.
const WORD = /[\p{L}\p{M}\p{N}\u00AD\u200B-\u200D\u2060]+(?:['’‘ʼ`´][\p{L}\p{M}\p{N}\u00AD\u200B-\u200D\u2060]+)*/gu
const WOULD = /(?<=^\p{L}{3,})['’‘ʼ`´]d$/iu
const NOT_IN_WORD = /[^\p{L}\p{N}]/gu
const PLAIN = /^[A-Za-z0-9]+$/u
