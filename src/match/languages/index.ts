import type { Guide } from '../../guide/index.js'
import { tokenize } from '../tokens.js'
import { ENGLISH } from './en.js'
import { SPANISH } from './es.js'
import { remember } from './remember.js'
import type { Speech } from './speech.js'

const SPEECHES: ReadonlyMap<string, Speech> = new Map([['en', ENGLISH], ['es', SPANISH]])

/**
 * What the hearing knows of a language.
 * @param language a BCP 47 tag; only its first part counts. English for a language that we know nothing of.
 */
export function speechIn(language: string): Speech {
  return SPEECHES.get(language.toLowerCase().split('-')[0] ?? '') ?? ENGLISH
}

/**
 * The speech of a guide, or of a view of it in another language (`guideIn`). A view hears the phrases of the guide's own
 * language as well, so a word that only those have keeps its own forms: "leaves" is a leaf in a Spanish question too.
 */
export function speechOf(guide: Guide): Speech {
  const speech = speechIn(guide.language)
  const translation = guide.translations.get(guide.language)
  if (translation === undefined || speech === ENGLISH) return speech
  const own: Forms = { words: new Set(), stems: new Set() }
  for (const texts of translation.texts.values()) addForms(own, texts, speech)
  for (const texts of phrasesOf(translation.layWords)) addForms(own, texts, speech)
  const others: Forms = { words: new Set(), stems: new Set() }
  for (const { called, nodes } of guide.hosts) {
    addForms(others, called, ENGLISH)
    for (const { entry } of nodes) addForms(others, entry, ENGLISH)
  }
  for (const { answers } of guide.checks) for (const { saidAs } of answers) addForms(others, saidAs, ENGLISH)
  for (const texts of phrasesOf(guide.layWords)) addForms(others, texts, ENGLISH)
  const isOther = (word: string): boolean => !own.words.has(word)
    && (others.words.has(word) || (!own.stems.has(speech.stem(word)) && others.stems.has(ENGLISH.stem(word))))
  // Marked, or the Spanish spade ("pala") would meet what is pale.
  const stem = remember((word) => (isOther(word) ? `~${ENGLISH.stem(word)}` : speech.stem(word)))
  return {
    ...speech, stem,
    answers: { ...speech.answers, ofAnotherYear: stem(ENGLISH.answers.ofAnotherYear) },
    singular: remember((word) => (isOther(word) ? ENGLISH.singular(word) : speech.singular(word))),
  }
}

function phrasesOf({ alike, otherPlants, things, grounds }: Guide['layWords']): readonly (readonly string[])[] {
  return [...alike, otherPlants, things, grounds]
}

/** The words of a language as they stand in the guide. */
interface Forms {
  readonly words: Set<string>
  readonly stems: Set<string>
}

function addForms({ words, stems }: Forms, texts: readonly string[], { stem }: Speech): void {
  for (const text of texts) {
    for (const { text: word } of tokenize(text)) {
      words.add(word)
      stems.add(stem(word))
    }
  }
}
