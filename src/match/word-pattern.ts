import { tokenize, type Token } from './tokens.js'

/**
 * A group word as an author writes it: one word, several words in a row, or words with choices.
 * `slugs/snails ate/chewed` stands for four phrases. Each step lists the choices at that place.
 */
export type WordPattern = readonly (readonly string[])[]

/** Where a pattern was heard: first and last token, both included. */
export interface Span {
  readonly first: number
  readonly last: number
}

/** Word patterns arranged by their first word, so that a text is walked once. */
export type PatternSet = ReadonlyMap<string, readonly WordPattern[]>

/** Compiles group words. Words that say nothing ("some", "just") are left out of patterns of several words. */
export function compilePatterns(groupWords: readonly string[]): PatternSet {
  const byFirst = new Map<string, WordPattern[]>()
  for (const written of groupWords) {
    const steps = readPattern(written)
    const pattern = withoutFillers(steps)
    for (const first of pattern[0] ?? []) {
      const others = byFirst.get(first)
      if (others === undefined) byFirst.set(first, [pattern])
      else others.push(pattern)
    }
  }
  return byFirst
}

/** Where each word of a text stands. */
export type WordPlaces = ReadonlyMap<string, readonly number[]>

/** Notes where each word of a text stands, so that many pattern sets can be looked for without reading it again. */
export function placeWords(tokens: readonly Token[]): WordPlaces {
  const places = new Map<string, number[]>()
  for (const [place, { text }] of tokens.entries()) {
    const so = places.get(text)
    if (so === undefined) places.set(text, [place])
    else so.push(place)
  }
  return places
}

/** Everywhere any of the patterns is heard, in order of the first word. Fillers between words are passed over. */
export function findPatterns(tokens: readonly Token[], places: WordPlaces, patterns: PatternSet): readonly Span[] {
  const spans: Span[] = []
  // Whichever has fewer different words is walked: a short question against a long list, or the reverse.
  const shorter = places.size < patterns.size ? places.keys() : patterns.keys()
  for (const word of shorter) {
    const candidates = patterns.get(word)
    if (candidates === undefined) continue
    for (const first of places.get(word) ?? []) {
      for (const pattern of candidates) {
        const last = lastWordOf(pattern, tokens, first)
        if (last !== null) spans.push({ first, last })
      }
    }
  }
  return spans.sort((a, b) => a.first - b.first || a.last - b.last)
}

function lastWordOf(pattern: WordPattern, tokens: readonly Token[], first: number): number | null {
  let at = first
  for (const choices of pattern.slice(1)) {
    at += 1
    while (at < tokens.length && FILLERS.has(textAt(tokens, at)) && !choices.includes(textAt(tokens, at))) at += 1
    if (!choices.includes(textAt(tokens, at))) return null
  }
  return at
}

function readPattern(written: string): WordPattern {
  return written
    .split(/\s+/u)
    .map((step) => step.split('/').flatMap((choice) => tokenize(choice).map((token) => token.text)))
    .filter((choices) => choices.length > 0)
}

function withoutFillers(steps: WordPattern): WordPattern {
  const kept = steps.filter((choices) => !choices.every((choice) => FILLERS.has(choice)))
  return kept.length === 0 ? steps : kept
}

function textAt(tokens: readonly Token[], place: number): string {
  return tokens[place]?.text ?? ''
}

/** Words that come between others without changing what happened: "ate some berries" is "ate berries". */
const FILLERS: ReadonlySet<string> = new Set([
  'a', 'an', 'the', 'some', 'sum', 'sme', 'just', 'jus', 'really', 'actually', 'accidentally', 'accidently', 'already',
  'also', 'even', 'maybe', 'probably', 'possibly', 'definitely', 'now', 'all', 'only', 'apparently', 'somehow', 'literally',
  'of', 'bit', 'few', 'couple', 'lots', 'lot', 'loads', 'um', 'er', 'like',
])
