import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { appendTicketChange, type Db, markUrgent, ticketByCase } from '../../store/index.js'
import type { Room } from '../room.js'
import { urgencyOf } from './urgency.js'

/** Makes a case's unsettled ticket urgent when what has been learnt since says so. It never becomes less urgent. */
export async function raiseUrgency(
  room: Room, db: Db, caseId: number, guide: Guide, reading: Reading,
): Promise<void> {
  const why = urgencyOf(guide, reading)
  if (why === null) return
  const ticket = await ticketByCase(db, caseId)
  if (ticket === undefined || ticket.urgent === 1 || ticket.state === 'settled') return
  await markUrgent(db, ticket.id, why)
  await appendTicketChange(db, {
    ticket_id: ticket.id, at: room.now().toISOString(), person_id: null, what: JSON.stringify({ kind: 'urgent', why }),
  })
}
