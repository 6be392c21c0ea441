import { DeskFault } from '../desk-fault.js'
import { redFlagNamed } from '../guide-names.js'
import type { CaseChange } from './case-change.js'
import { readCaseFile } from './read-case-file.js'

/** The asker has seen the red-flag cards and goes on with the plant question. */
export function carryOnChange(): CaseChange {
  return {
    kind: 'carry-on',
    content: {},
    apply(now, { guide }) {
      const cards = readCaseFile(guide, now).cards.flatMap((name) => redFlagNamed(guide, name) ?? [])
      if (cards.length === 0) throw new DeskFault('NO_RED_FLAG')
      if (cards.some((card) => card.then === 'stop')) throw new DeskFault('CASE_STOPPED')
      return { ...now, evidence: { ...now.evidence, carriedOn: true } }
    },
  }
}
