import type { TicketContact } from '../../../shared/index.js'
import { appendContactRead, contactOf, contactReadsOf } from '../../store/index.js'
import type { Member } from '../people/member.js'
import { openContact } from '../privacy/contacts.js'
import type { Room } from '../room.js'
import { findTicket } from './find-ticket.js'

/** The asker's contact details. That they were read, by whom and when, is written down with every reading. */
export async function readContact(room: Room, number: string, who: Member): Promise<TicketContact> {
  return room.db.transaction().execute(async (db) => {
    const ticket = await findTicket(db, number)
    const row = await contactOf(db, ticket.id)
    const readBefore = await contactReadsOf(db, ticket.id)
    if (row === undefined) return { contact: null, readBefore }
    await appendContactRead(db, { ticket_id: ticket.id, at: room.now().toISOString(), person_id: who.id })
    return { contact: openContact(room.keys, row), readBefore }
  })
}
