import type { ChangeLanguage } from '../../../shared/index.js'
import type { Room } from '../room.js'
import type { CaseChange } from './case-change.js'
import { hearWords, withSaid } from './hear-words.js'

/**
 * Speaks to the asker in another language from now on: on the sheet, in letters, and behind the link later on. While the
 * plant is not settled the words are heard anew: whoever changes the language wrote in that one, most likely.
 */
export function languageChange({ knowledge }: Pick<Room, 'knowledge'>, { language }: ChangeLanguage): CaseChange {
  return {
    kind: 'language',
    content: { language },
    apply(now) {
      if (now.evidence.start !== null) return { ...now, language }
      const { redFlags, matched, findings } = hearWords(knowledge(language), now.words)
      const { evidence } = now
      return {
        ...now, language, matched,
        // What was heard as a danger once stays one.
        evidence: { ...evidence, redFlags: [...new Set([...evidence.redFlags, ...redFlags])], findings: withSaid(evidence.findings, findings) },
      }
    },
  }
}
