import type { Acceptance, HearingDraft, LayWordsDraft, WordSetsDraft } from '../drafts.js'
import type { ParsedFile } from '../parse.js'
import type { Located, Place } from '../source-file.js'
import type { Original, OriginalKind, TextSlot } from './texts-of.js'

/** A translation file as read, not yet held against its original. */
export interface TranslationDraft {
  readonly kind: 'translation'
  /** BCP 47 tag from the file's name: the `es` of tomato.es.yaml. */
  readonly language: string
  readonly of: OriginalKind
  readonly id: Located<string>
  /** Its author says that nothing is missing; the proof then warns of what is missing or out of date. */
  readonly complete: boolean
  /** Marks of the English texts it was made from (english-mark.ts). */
  readonly madeFrom: ReadonlySet<string>
  /** What a red flag listens for in this language, as written; empty for other kinds. */
  readonly hear: readonly HearingDraft[]
  /** Word sets that `hear` names. */
  readonly setsUsed: readonly Located<string>[]
  readonly accepts: readonly Acceptance[]
  readonly parsed: ParsedFile
}

/** Lay words or word sets of another language: lay-words.es.yaml, word-sets.es.yaml. */
export interface LanguageWordsDraft {
  readonly kind: 'words of a language'
  readonly language: string
  readonly at: Place
  readonly words: LayWordsDraft | WordSetsDraft
}

export type TextState = 'good' | 'missing' | 'out of date'

/** The words of one slot, and how they stand to the English. */
export interface HeldText {
  readonly slot: TextSlot
  /** The words' place, or the nearest place around where they would stand. */
  readonly at: Place
  /** Null when missing. */
  readonly words: readonly string[] | null
  readonly state: TextState
}

/** A translation held against its original. */
export interface HeldTranslation {
  readonly draft: TranslationDraft
  readonly original: Original
  /** In the order of the original. */
  readonly texts: readonly HeldText[]
}
