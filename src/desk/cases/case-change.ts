import type { Knowledge } from '../room.js'
import type { CaseFile } from './case-file.js'

export type CaseContent = Pick<CaseFile, 'evidence' | 'words' | 'matched' | 'language'>

/** One thing done to a case, before it is applied. */
export interface CaseChange {
  readonly kind: 'place' | 'words' | 'answer' | 'take-back' | 'carry-on' | 'note' | 'hand-over' | 'photo' | 'photo-removed' | 'language'
  /** Plain JSON kept in the history. The same change has the same content, key by key in the same order. */
  readonly content: Readonly<Record<string, unknown>>
  /** What the case holds afterwards. Throws a DeskFault when the change cannot be made. */
  apply(now: CaseFile, knowledge: Knowledge): CaseContent
}
