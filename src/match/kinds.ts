import type { LayWords } from '../guide/index.js'
import type { Speech } from './languages/speech.js'
import { deniedPlaces } from './meanings.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/** The kinds of words of a guide (insects, soil, weather), ready to be heard. */
export interface KindEars {
  readonly speech: Speech
  readonly names: readonly string[]
  readonly patterns: PatternIndex
}

/** Compiles the guide's kinds of words. Words and questions meet in the singular; small words count as they are written. */
export function buildKindEars({ kinds }: LayWords, speech: Speech): KindEars {
  const groups = [...kinds.values()].map((words) => [...new Set(words
    .filter((pattern) => !speech.silent.has(pattern.toLowerCase()))
    .map((pattern) => patternInSingular(speech, pattern)))])
  return { speech, names: [...kinds.keys()], patterns: buildPatternIndex(groups, 'kept') }
}

/**
 * The kinds of which a word is heard, by name, with where the first stands. A denied word ("no insects", "without
 * droppings") says that the question is not about its kind.
 * @param nameWords places of words that name a plant: the "box" of a box hedge is no thing
 */
export function hearKinds({ speech, names, patterns }: KindEars, tokens: readonly Token[], nameWords: ReadonlySet<number>): ReadonlyMap<string, number> {
  const denied = deniedPlaces(tokens, speech)
  const found = findGroups(tokensInSingular(speech, tokens), patterns)
  const heard = new Map<string, number>()
  const longer = [...found].flatMap(([group, spans]) => (HOLDING.has(names[group] ?? '') ? spans : [])).filter(({ first, last }) => last > first)
  // "Weed killer" is no weed, nor "bird seed" a bird.
  const isInside = (first: number): boolean => longer.some((other) => other.first <= first && other.last >= first)
  for (const [group, spans] of found) {
    const span = spans.find(({ first, last }) => !denied.has(first) && !(first === last && (nameWords.has(first) || isInside(first))))
    const name = names[group]
    if (span !== undefined && name !== undefined) heard.set(name, span.first)
  }
  return heard
}

/** Kinds whose longer words hold a word of another kind that they do not mean. */
const HOLDING: ReadonlySet<string> = new Set(['spoilers', 'stores'])

/** A pattern as kinds of words are heard: each of its words small, without accents and in the singular. */
export function patternInSingular(speech: Speech, pattern: string): string {
  return pattern.replace(/[^\s/]+/gu, (word) => inSingular(speech, word))
}

/** A question's words in the form in which patterns meet them. */
export function tokensInSingular(speech: Speech, tokens: readonly Token[]): readonly Token[] {
  return tokens.map((token) => ({ ...token, text: inSingular(speech, token.text) }))
}

/** "A bit" is no bite: that one irregular form is left as it is. */
function inSingular({ singular }: Speech, word: string): string {
  return word === 'bit' ? word : singular(word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase())
}
