import type { Language } from '../../../shared/index.js'
import type { SheetWording } from './en-sheet.js'
import type { Wording } from './en.js'

/** The words of one language: those of the first paint, and those of an open sheet, null where they come with the sheet itself. */
export interface Spoken {
  readonly language: Language
  readonly wording: Wording
  readonly sheet: SheetWording | null
}
