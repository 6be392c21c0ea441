import type { AskBack, TicketView } from '../../../shared/index.js'
import { appendQuestion, questionsOf, type TicketQuestionRow } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { checkNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { caseOf } from './find-ticket.js'
import { moveTicket } from './make-move.js'
import { showTicket } from './ticket-desk.js'
import { whyNot } from './ticket-moves.js'

/**
 * Opens the asker's case again with chosen checks, a wish for photos, or words. What they answer lands on the ticket and
 * moves the differential. The same question twice in a row is asked once.
 */
export async function askBack(room: Room, number: string, body: AskBack, who: Member): Promise<TicketView> {
  const asked = { ...body, checks: [...new Set(body.checks)] }
  await moveTicket(room, number, who, async (db, ticket) => {
    const fault = whyNot('ask back', ticket, who)
    if (fault !== null) throw fault
    if (ticket.state === 'asked back' && isLast((await questionsOf(db, ticket.id)).at(-1), asked)) return null
    const { guide } = room.knowledge()
    for (const check of asked.checks) {
      if (checkNamed(guide, check) === null) throw new DeskFault('UNKNOWN_CHECK', { words: { check } })
    }
    const { revision } = await caseOf(db, ticket)
    await appendQuestion(db, {
      ticket_id: ticket.id, at: room.now().toISOString(), person_id: who.id, revision, text: asked.text,
      checks: JSON.stringify(asked.checks), photos: asked.photos ? 1 : 0, answered_at: null,
    })
    return { move: 'ask back', happening: { kind: 'asked back', checks: asked.checks, photos: asked.photos } }
  })
  return showTicket(room, number, who)
}

function isLast(last: TicketQuestionRow | undefined, { text, checks, photos }: AskBack): boolean {
  return last !== undefined && last.answered_at === null && last.text === text && (last.photos === 1) === photos
    && last.checks === JSON.stringify(checks)
}
