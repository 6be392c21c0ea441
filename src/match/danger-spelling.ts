import type { RedFlagEars } from './red-flags.js'
import { WEIGHTS } from './score.js'
import { buildSpeller, type Speller } from './spelling.js'
import type { Token } from './tokens.js'

/** Reads misspelled words of danger: people in a hurry write "swolowed" and "posionous". */
export interface DangerSpelling {
  readonly spell: Speller
  /** True for every word that the red flags know, cancelling ones too: "squirrel" is no misspelled "squirted". */
  readonly isDangerWord: (word: string) => boolean
}

/** Gathers the words that the red flags listen for. Short ones are never a guess: too many other words lie one letter away. */
export function buildDangerSpelling({ flags, patterns }: RedFlagEars): DangerSpelling {
  const hearings = flags.flatMap((flag) => flag.hearings)
  const wordsIn = (groups: readonly number[]): readonly string[] => [...new Set(groups)].flatMap((group) => [...(patterns.words[group] ?? [])])
  const words = new Set(wordsIn(hearings.flatMap(({ groups }) => groups)))
  const known = new Set([...words, ...wordsIn(hearings.map(({ unless }) => unless))])
  return { spell: buildSpeller([...words].filter((word) => word.length >= SHORTEST)), isDangerWord: (word) => known.has(word) }
}

/**
 * The words of a question with misspelled words of danger put right; places stay those of what was written.
 * `isWord` tells words that are right as they stand.
 */
export function respellDanger({ spell, isDangerWord }: DangerSpelling, tokens: readonly Token[], isWord: (word: string) => boolean): readonly Token[] {
  const tried = new Set<string>()
  return tokens.map((token) => {
    const { text } = token
    // "The baby's been", "my husbands mouth": the word without its s is meant.
    if (text.endsWith('s') && !isDangerWord(text) && isDangerWord(text.slice(0, -1))) return { ...token, text: text.slice(0, -1) }
    if (text.length < SHORTEST - 1 || isDangerWord(text) || isWord(text)) return token
    if (!tried.has(text) && tried.size >= WEIGHTS.dangersRespelled) return token
    tried.add(text)
    const [near, other] = spell(text)
    if (near === undefined || near.word[0] !== text[0] || (other !== undefined && near.slips === 2 && other.slips === 2 && other.word[0] === near.word[0])) return token
    return { ...token, text: near.word }
  })
}

const SHORTEST = 6
