import type { Guide } from '../guide/index.js'
import type { EntryEars } from './entries.js'
import { buildEntryPhrases } from './entry-phrases.js'
import { buildHostNames, type HostNames } from './hosts.js'
import { knownWords } from './known-words.js'
import type { Matched } from './matched.js'
import { buildMeanings } from './meanings.js'
import { hearPlace } from './place.js'
import { buildProblemWords } from './problem-words.js'
import { buildRedFlagEars, hearRedFlags, type RedFlagEar } from './red-flags.js'
import { WEIGHTS } from './score.js'
import { buildSpeller } from './spelling.js'
import { tokenize } from './tokens.js'

/** A guide made ready for listening to questions. Make it once a guide; it is never changed. */
export interface MatchIndex {
  readonly redFlags: readonly RedFlagEar[]
  readonly hostNames: HostNames
  readonly entries: EntryEars
  /** Words that are right as they stand and so are never respelled. */
  readonly knownWords: ReadonlySet<string>
}

/** Makes a guide ready for listening. Takes some tens of milliseconds for a full guide. */
export function buildMatchIndex(guide: Guide): MatchIndex {
  const meanings = buildMeanings(guide.layWords)
  const phrases = buildEntryPhrases(guide, meanings)
  const problems = buildProblemWords(guide, meanings)
  return {
    redFlags: buildRedFlagEars(guide),
    hostNames: buildHostNames(guide),
    entries: { meanings, phrases, problems, spell: buildSpeller([...phrases.words, ...meanings.groups.keys()]) },
    knownWords: knownWords(guide),
  }
}

/**
 * What is heard in one question, in the asker's own words: red flags first, then the plants named, then the complaints.
 * Pure, and takes any text at all: words it cannot use give empty lists. Red flags are listened for in the whole text,
 * plants and complaints in its first `WEIGHTS.wordsWeighed` words.
 */
export function matchQuestion(index: MatchIndex, words: string): Matched {
  const tokens = tokenize(words)
  const weighed = tokens.slice(0, WEIGHTS.wordsWeighed)
  const isWord = (word: string): boolean => index.knownWords.has(word)
  const redFlags = hearRedFlags(index.redFlags, words, tokens)
  return { redFlags, ...hearPlace(index.hostNames, index.entries, words, weighed, isWord, redFlags.length > 0) }
}
