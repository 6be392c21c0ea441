import type { AddWords } from '../../../shared/index.js'
import { DeskFault } from '../desk-fault.js'
import type { CaseChange } from './case-change.js'
import { hearAnswers, hearWords, withSaid } from './hear-words.js'

/** Most messages in one case; an asker needs a few, a script could send any number. */
const MOST_MESSAGES = 40

/** Adds to what the asker said, and listens to all of it again. */
export function wordsChange({ words: message }: AddWords): CaseChange {
  return {
    kind: 'words',
    content: { words: message },
    apply(now, knowledge) {
      if (now.words.length >= MOST_MESSAGES) throw new DeskFault('CASE_FULL')
      const words = [...now.words, message]
      const { redFlags, matched, findings: heard } = hearWords(knowledge, words)
      const { start } = now.evidence
      const said = start === null ? heard : hearAnswers(knowledge, words, start.host)
      const findings = withSaid(now.evidence.findings, said)
      return { ...now, words, matched, evidence: { ...now.evidence, redFlags: together(now.evidence.redFlags, redFlags), findings } }
    },
  }
}

function together(earlier: readonly string[], heard: readonly string[]): string[] {
  return [...new Set([...earlier, ...heard])]
}
