import type { Guide } from '../guide/index.js'
import { hearKinds, type KindEars } from './kinds.js'
import type { Speech } from './languages/speech.js'
import type { LetterSign } from './letter-weights.js'
import { type Meanings, readTerms } from './meanings.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/** What a whole letter is weighed with. */
export interface LetterEars {
  readonly meanings: Meanings
  readonly kinds: KindEars
  /** Key of a group of alike words to its first word, which stays the same when groups are added. */
  readonly groupNames: ReadonlyMap<string, string>
  readonly setNames: readonly string[]
  readonly sets: PatternIndex
}

/** Makes ready what whole letters are weighed by. */
export function buildLetterEars({ layWords, wordSets }: Guide, meanings: Meanings, kinds: KindEars): LetterEars {
  const setNames = [...wordSets.keys()]
  return {
    meanings, kinds, setNames, sets: buildPatternIndex(setNames.map((name) => wordSets.get(name) ?? [])),
    groupNames: new Map(layWords.alike.map(([first = ''], number) => [`#${number}`, first])),
  }
}

/**
 * The signs that a letter is weighed by, each once: its words by their stems ("eat"), groups of alike words ("=bugs"), what
 * is denied ("not eat"), the kinds of lay words ("kind insects") and the sets of words of the red flags ("set people").
 * Nothing of their order is kept. A bare number is none: the 3 of a child's age would speak for every 3.
 * @param listened the same tokens, with what else they may stand for where dangers are listened for
 */
export function letterSigns({ meanings, kinds, groupNames, setNames, sets }: LetterEars, tokens: readonly Token[], listened: readonly Token[]): readonly LetterSign[] {
  const signs = new Map<string, LetterSign>()
  const add = (name: string, first: number, last: number): void => { if (!signs.has(name)) signs.set(name, { name, first, last }) }
  for (const [place, { text }] of listened.entries()) if (!NUMBER.test(text)) add(meanings.speech.stem(text), place, place)
  for (const { key, first, last, negated } of readTerms(meanings, tokens)) {
    const group = groupNames.get(key)
    if (negated || group !== undefined) add(`${negated ? 'not ' : ''}${group === undefined ? key : `=${group}`}`, first, last)
  }
  for (const [kind, place] of hearKinds(kinds, tokens, NO_NAMES)) add(`kind ${kind}`, place, place)
  for (const [set, spans] of findGroups(listened, sets)) {
    const [span] = spans
    if (span !== undefined) add(`set ${setNames[set] ?? ''}`, span.first, span.last)
  }
  return [...signs.values()]
}

const NO_NAMES: ReadonlySet<number> = new Set()
const NUMBER = /^\d+$/u

/** The pairs of words that follow one another, by their stems: "what grow", which a word alone does not tell. */
export function pairSigns({ stem }: Speech, tokens: readonly Token[]): readonly LetterSign[] {
  const signs = new Map<string, LetterSign>()
  for (const [place, { text }] of tokens.entries()) {
    const next = tokens[place + 1]
    if (next === undefined) break
    const name = `${stem(text)} ${stem(next.text)}`
    if (!signs.has(name)) signs.set(name, { name, first: place, last: place + 1 })
  }
  return [...signs.values()]
}
