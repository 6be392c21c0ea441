import type { TakeBack } from '../../../shared/index.js'
import { DeskFault } from '../desk-fault.js'
import type { CaseChange } from './case-change.js'

/** Takes an answer back, as after a slip of the finger. The history keeps both; a card that the answer raised stays. */
export function takeBackChange({ check }: TakeBack): CaseChange {
  return {
    kind: 'take-back',
    content: { check },
    apply(now) {
      const findings = now.evidence.findings.filter((finding) => finding.check !== check)
      if (findings.length === now.evidence.findings.length) throw new DeskFault('NOT_ANSWERED', { words: { check } })
      return { ...now, evidence: { ...now.evidence, findings } }
    },
  }
}
