import type { NoteCall } from '../../../shared/index.js'
import type { CaseChange } from './case-change.js'
import { hearRedFlags } from './hear-words.js'

/** A volunteer's note on a call. A red flag in it counts as one in the caller's own words. */
export function noteChange({ text }: NoteCall): CaseChange {
  return {
    kind: 'note',
    content: { text },
    apply(now, knowledge) {
      const redFlags = [...new Set([...now.evidence.redFlags, ...hearRedFlags(knowledge, text)])]
      return { ...now, evidence: { ...now.evidence, redFlags } }
    },
  }
}
