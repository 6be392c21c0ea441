import { z } from 'zod'
import type { AskedBack } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import { caseChanges, checksAskedBack, type Db, type TicketQuestionRow } from '../../store/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { checkNamed } from '../guide-names.js'
import { checkCard } from '../views/cards.js'

const Checks = z.array(z.string())
const AnswerContent = z.object({ check: z.string() })

/** A question with the answers that the case has to it now. A check that the guide no longer has is left out. */
export function questionView(guide: Guide, file: CaseFile, question: TicketQuestionRow, freshFrom: ReadonlyMap<string, number>): AskedBack {
  const given = new Map(file.evidence.findings.map(({ check, answer }) => [check, answer]))
  return {
    text: question.text, at: question.at, photos: question.photos === 1, answered: question.answered_at !== null,
    checks: Checks.parse(JSON.parse(question.checks)).flatMap((name): AskedBack['checks'] => {
      const check = checkNamed(guide, name)
      if (check === null) return []
      return [{
        check: checkCard(check), answer: given.get(name) ?? null, fresh: (freshFrom.get(name) ?? -1) > question.revision,
      }]
    }),
  }
}

/** Whether a specialist has asked the asker of this case for this check. */
export async function wasAskedBack(db: Db, link: string, check: string): Promise<boolean> {
  return (await checksAskedBack(db, link)).some((checks) => Checks.parse(JSON.parse(checks)).includes(check))
}

/** At which revision each check of a case was last answered. */
export async function lastAnswered(db: Db, caseId: number): Promise<ReadonlyMap<string, number>> {
  const changes = await caseChanges(db, caseId, 'answer')
  return new Map(changes.map(({ content, revision }) => [AnswerContent.parse(JSON.parse(content)).check, revision]))
}
