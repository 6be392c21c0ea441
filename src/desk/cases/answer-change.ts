import type { AnswerCheck } from '../../../shared/index.js'
import { DeskFault } from '../desk-fault.js'
import { checkNamed, takesAnswer } from '../guide-names.js'
import type { CaseChange } from './case-change.js'
import type { KeptFinding } from './case-file.js'

/**
 * Answers a check, or changes the answer given before: then the line keeps its place on the sheet, and the check counts
 * as looked at twice, so that the engine does not ask for another look.
 * @param askedBack true when a specialist asked for this check: then it is taken before the plant is settled too
 */
export function answerChange({ check: name, answer, from = 'asked' }: AnswerCheck, askedBack = false): CaseChange {
  return {
    kind: 'answer',
    content: { check: name, answer, from },
    apply(now, { guide }) {
      const check = checkNamed(guide, name)
      if (check === null) throw new DeskFault('UNKNOWN_CHECK', { words: { check: name } })
      if (!takesAnswer(check, answer)) throw new DeskFault('UNKNOWN_ANSWER', { words: { check: name, answer } })
      // What was heard in the words may be set right before the plant is settled; a new answer would be weighed by nothing.
      const isHeard = now.evidence.findings.some((finding) => finding.check === name)
      if (now.evidence.start === null && !isHeard && !askedBack) throw new DeskFault('PLACE_FIRST')
      const findings = withFinding(now.evidence.findings, { check: name, answer, from })
      return { ...now, evidence: { ...now.evidence, findings } }
    },
  }
}

function withFinding(findings: readonly KeptFinding[], finding: KeptFinding): KeptFinding[] {
  const known = findings.some(({ check }) => check === finding.check)
  if (!known) return [...findings, finding]
  return findings.map((earlier) => (earlier.check === finding.check ? { ...finding, again: true } : earlier))
}
