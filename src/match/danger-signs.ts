import type { Guide } from '../guide/index.js'
import { ENGLISH } from './languages/en.js'
import { deniedPlaces } from './meanings.js'
import { stem } from './stems.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/**
 * What tells a danger besides the patterns of the red flags: words, words in a row, words of one set ("small children",
 * "swallowed"), and a word of one set a little before a word of another.
 */
export interface DangerSigns {
  /** Names of the word sets, in the order of their numbers. */
  readonly sets: readonly string[]
  readonly patterns: PatternIndex
}

/** Gathers the word sets of a guide. */
export function buildDangerSigns({ wordSets }: Guide): DangerSigns {
  return { sets: [...wordSets.keys()], patterns: buildPatternIndex([...wordSets.values()]) }
}

/** How many numbers the signs of the sets take: one each, and one for each two in order. Words come after them. */
export function signsOfSets({ sets }: DangerSigns): number {
  return sets.length + sets.length * sets.length
}

/** The number of the sign that a word of one set stands a little before a word of another, by their numbers. */
export function signOfPair({ sets }: DangerSigns, before: number, after: number): number {
  return sets.length + before * sets.length + after
}

/**
 * The signs that begin at each word, by number. A word that is denied tells of nothing: "never licked it".
 * @param tokens words with misspelled words of danger put right
 * @param numberOfWords gives the number of a stem, or of two in a row with a space between, or less than 0 for none
 */
export function readDangerSigns(signs: DangerSigns, tokens: readonly Token[], numberOfWords: (words: string) => number): readonly (readonly number[])[] {
  const setsAt: number[][] = tokens.map(() => [])
  for (const [set, spans] of findGroups(tokens, signs.patterns)) {
    for (const { first } of spans) {
      const here = setsAt[first]
      if (here !== undefined && !here.includes(set)) here.push(set)
    }
  }
  const stems = tokens.map(({ text }) => stem(text))
  const denied = deniedPlaces(tokens, ENGLISH)
  return stems.map((word, place) => {
    if (denied.has(place)) return []
    const next = stems[place + 1]
    const words = [numberOfWords(word), next === undefined ? -1 : numberOfWords(`${word} ${next}`)]
    const here = setsAt[place] ?? []
    const pairs = new Set<number>()
    for (let after = place + 1; after <= place + PAIR_WITHIN && after < setsAt.length; after += 1) {
      for (const other of setsAt[after] ?? []) for (const set of here) if (set !== other) pairs.add(signOfPair(signs, set, other))
    }
    return [...words.filter((number) => number >= 0), ...here, ...pairs]
  })
}

/**
 * Stretches of a text that are judged by themselves, as first word and word after the last: a letter of two hundred
 * words is no danger because each of its sentences has a word of one.
 */
export function stretchesOf(words: number): readonly (readonly [number, number])[] {
  const stretches: [number, number][] = []
  for (let from = 0; ; from += STRETCH / 2) {
    stretches.push([from, Math.min(words, from + STRETCH)])
    if (from + STRETCH >= words) return stretches
  }
}

/** "Him" and "swallowed" five words apart still belong together. */
const PAIR_WITHIN = 6
const STRETCH = 24
