import type { AnswerCheck, CaseView } from '../../../shared/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { wasAskedBack } from '../tickets/question-view.js'
import { answerChange } from './answer-change.js'
import { changeCase } from './change-case.js'

/**
 * Answers a check. Before the plant is settled only what a specialist asked for is taken; whether one did is looked up only
 * then, as almost every answer comes after.
 */
export async function answerCheck(room: Room, link: string, body: AnswerCheck, who: Member | null): Promise<CaseView> {
  try {
    return await changeCase(room, link, body.revision, who, answerChange(body))
  } catch (fault) {
    const isTooEarly = fault instanceof DeskFault && fault.code === 'PLACE_FIRST'
    if (!isTooEarly || !await wasAskedBack(room.db, link, body.check)) throw fault
    return changeCase(room, link, body.revision, who, answerChange(body, true))
  }
}
