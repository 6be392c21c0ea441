import type { RedFlagEars } from './red-flags.js'
import { WEIGHTS } from './score.js'
import { buildSpeller, type Speller } from './spelling.js'
import type { Token } from './tokens.js'

/** Reads misspelled words of danger: people in a hurry write "swolowed" and "posionous". */
export interface DangerSpelling {
  readonly spell: Speller
  /** True for every word that the red flags know, cancelling ones too: "squirrel" is no misspelled "squirted". */
  readonly isDangerWord: (word: string) => boolean
  /** True for two words that a red flag lists side by side: one may be the other misspelled or in another number. */
  readonly areListedTogether: (one: string, other: string) => boolean
}

/** Gathers the words that the red flags listen for. Short ones are never a guess: too many other words lie one letter away. */
export function buildDangerSpelling({ flags, patterns }: RedFlagEars): DangerSpelling {
  const hearings = flags.flatMap((flag) => flag.hearings)
  const wordsIn = (groups: readonly number[]): readonly string[] => [...new Set(groups)].flatMap((group) => [...(patterns.words[group] ?? [])])
  const words = new Set(wordsIn(hearings.flatMap(({ groups }) => groups)))
  const known = new Set([...words, ...wordsIn(hearings.map(({ unless }) => unless))])
  const groupsOf = new Map<string, Set<number>>()
  for (const group of new Set(hearings.flatMap(({ groups, unless }) => [...groups, unless]))) for (const word of patterns.words[group] ?? []) groupsOf.set(word, (groupsOf.get(word) ?? new Set()).add(group))
  return {
    spell: buildSpeller([...words].filter((word) => word.length >= SHORTEST)),
    isDangerWord: (word) => known.has(word),
    areListedTogether: (one, other) => [...(groupsOf.get(one) ?? [])].some((group) => groupsOf.get(other)?.has(group) === true),
  }
}

/**
 * The words of a question with misspelled words of danger put right; places stay those of what was written. A misspelling
 * that some red flag lists as it is written also stands for the right word, for other red flags know only that one
 * ("chillis", "mushroms").
 * `isWord` tells words that are right as they stand.
 */
export function respellDanger({ spell, isDangerWord, areListedTogether }: DangerSpelling, tokens: readonly Token[], isWord: (word: string) => boolean): readonly Token[] {
  const tried = new Set<string>()
  // Right words of danger one slip from what was written, and listed beside it; a mere plural is no misspelling.
  const alsoFor = (written: string, listed: string): readonly string[] => spell(written)
    .flatMap(({ word, slips }) => (slips === 1 && word[0] === written[0] && word !== `${written}s` && isWord(word) && areListedTogether(listed, word) ? [word] : []))
  return tokens.map((token) => {
    const { text } = token
    const known = isDangerWord(text)
    // "The baby's been", "my husbands mouth": the word without its s is meant.
    if (!known && text.endsWith('s') && isDangerWord(text.slice(0, -1))) {
      const also = isWord(text) || text.length < SHORTEST ? [] : alsoFor(text, text.slice(0, -1))
      return also.length > 0 ? { ...token, text: text.slice(0, -1), also } : { ...token, text: text.slice(0, -1) }
    }
    if (text.length < SHORTEST - 1 || isWord(text)) return token
    if (!tried.has(text) && tried.size >= WEIGHTS.dangersRespelled) return token
    tried.add(text)
    if (known) {
      const also = alsoFor(text, text)
      return also.length > 0 ? { ...token, also } : token
    }
    const [best, other] = spell(text)
    if (best === undefined || best.word[0] !== text[0] || (other !== undefined && best.slips === 2 && other.slips === 2 && other.word[0] === best.word[0])) return token
    return { ...token, text: best.word }
  })
}

const SHORTEST = 6
