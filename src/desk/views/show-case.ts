import type { CaseView } from '../../../shared/index.js'
import { contactOf, type Db, ticketByCase } from '../../store/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { notesOf } from '../cases/notes.js'
import type { Member } from '../people/member.js'
import { photosOf } from '../photos/show-photo.js'
import type { Room } from '../room.js'
import { replyFromText } from '../tickets/reply.js'
import { ticketStateOf } from '../tickets/ticket-state.js'
import { caseView } from './case-view.js'

/** A case for whoever looks at it. The notes of a call are for the people of the helpline only. */
export async function showCase(room: Room, file: CaseFile, who: Member | null): Promise<CaseView> {
  const notes = who === null ? [] : await notesOf(room.db, file.id)
  const photos = await photosOf(room.db, file.id)
  return caseView(room.knowledge().guide, file, { notes, photos, ticket: await ticketOf(room.db, file.id) })
}

async function ticketOf(db: Db, caseId: number): Promise<CaseView['ticket']> {
  const ticket = await ticketByCase(db, caseId)
  if (ticket === undefined) return null
  return {
    state: ticketStateOf(ticket), openedAt: ticket.opened_at,
    contactGiven: await contactOf(db, ticket.id) !== undefined,
    reply: ticket.reply === null ? null : replyFromText(ticket.reply),
  }
}
