import type { LayWords } from '../guide/index.js'
import type { Speech } from './languages/speech.js'
import { tokenize, type Token } from './tokens.js'

/** What words mean to the hearing: forms of one word meet in a stem, and words that askers use alike meet in a group. */
export interface Meanings {
  readonly speech: Speech
  /** A word as written, or a stem, to the group it belongs to. */
  readonly groups: ReadonlyMap<string, string>
  /** Expressions of several words by the first stem, longest first. */
  readonly expressions: ReadonlyMap<string, readonly Expression[]>
}

interface Expression {
  readonly stems: readonly string[]
  readonly group: string
}

/** One telling word, or expression, of a text. */
export interface Term {
  /** What it is compared by: its group where it has one, else its stem. */
  readonly key: string
  /** Its own stem or stems, which tells the very word from one used alike. */
  readonly exact: string
  /** First and last token. */
  readonly first: number
  readonly last: number
  /** True for "no flowers", "never opens". */
  readonly negated: boolean
}

/** Makes the guide's lay words ready. */
export function buildMeanings({ alike }: LayWords, speech: Speech): Meanings {
  const { stem, silent } = speech
  const groups = new Map<string, string>()
  const expressions = new Map<string, Expression[]>()
  for (const [number, members] of alike.entries()) {
    const group = `#${number}`
    for (const member of members) {
      const words = tokenize(member).map(({ text }) => text)
      const [only, ...more] = words
      if (only === undefined) continue
      if (more.length === 0) {
        if (silent.has(only)) continue
        groups.set(only, group)
        if (!groups.has(stem(only))) groups.set(stem(only), group)
        continue
      }
      const stems = words.map(stem)
      const [first = ''] = stems
      const others = expressions.get(first)
      if (others === undefined) expressions.set(first, [{ stems, group }])
      else others.push({ stems, group })
    }
  }
  for (const list of expressions.values()) list.sort((a, b) => b.stems.length - a.stems.length)
  return { speech, groups, expressions }
}

/** The key by which a single word is compared. */
export function keyOf({ groups, speech }: Meanings, word: string): string {
  const bare = speech.stem(word)
  return groups.get(word) ?? groups.get(bare) ?? bare
}

/**
 * The telling words of a text, in order. A word after "no", "never", "wont" and the like is marked: "no flowers" and
 * "wont flower" meet, and neither meets "flowers" but weakly.
 */
export function readTerms(meanings: Meanings, tokens: readonly Token[]): readonly Term[] {
  const { stem, stopWords, negations, deniesWithTo, passesNegation, endsNegation } = meanings.speech
  const terms: Term[] = []
  const stems = tokens.map(({ text }) => stem(text))
  let negating = 0
  let spokenFor = -1
  for (let place = 0; place < tokens.length; place += 1) {
    const word = tokens[place]?.text ?? ''
    const exact = stems[place] ?? ''
    if (negations.has(word) || (deniesWithTo.has(word) && tokens[place + 1]?.text === 'to')) {
      negating = NEGATION_REACH
      continue
    }
    if (endsNegation.has(word)) negating = 0
    const negated = negating > 0
    if (negating > 0) negating -= 1
    const expression = expressionAt(meanings, stems, place)
    if (expression !== null) {
      const last = place + expression.stems.length - 1
      terms.push({ key: expression.group, exact: expression.stems.join(' '), first: place, last, negated })
      spokenFor = Math.max(spokenFor, last)
      if (negated && !passesNegation.has(word)) negating = 0
    }
    if (stopWords.has(word) && !meanings.groups.has(word)) continue
    if (place <= spokenFor && expression === null) continue
    if (expression === null) terms.push({ key: meanings.groups.get(word) ?? meanings.groups.get(exact) ?? exact, exact, first: place, last: place, negated })
    if (negated && passesNegation.has(word)) negating = NEGATION_REACH
    else if (negated && tokens[place + 1]?.text !== 'or' && tokens[place + 1]?.text !== 'nor') negating = 0
    else if (negated) negating = NEGATION_REACH
  }
  return terms
}

/** Places of words that are denied: "no", "never", "wont" and the like stand at most a few small words before them. */
export function deniedPlaces(tokens: readonly Token[], { stopWords, negations, endsNegation }: Speech): ReadonlySet<number> {
  const denied = new Set<number>()
  let negating = 0
  for (const [place, { text }] of tokens.entries()) {
    if (negations.has(text)) {
      negating = NEGATION_REACH
      continue
    }
    if (endsNegation.has(text)) negating = 0
    if (negating === 0) continue
    denied.add(place)
    negating = stopWords.has(text) ? negating - 1 : 0
  }
  return denied
}

function expressionAt({ expressions }: Meanings, stems: readonly string[], place: number): Expression | null {
  for (const expression of expressions.get(stems[place] ?? '') ?? []) {
    if (expression.stems.every((each, step) => stems[place + step] === each)) return expression
  }
  return null
}

/** Small words that may stand between a negation and what it denies: "cannot find any bugs at all". */
const NEGATION_REACH = 4
