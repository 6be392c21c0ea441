import type { TicketView } from '../../../shared/index.js'
import { advanceTicket, type Db, type TicketAdvance, ticketsHeldBy, type TicketWithTaker } from '../../store/index.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { writeDown } from './happening.js'
import { moveTicket } from './make-move.js'
import { showTicket } from './ticket-desk.js'
import { ticketMoves, ticketStateOf, waitsForUs } from './ticket-moves.js'

/** Gives a ticket back to the waiting ones. What was asked or sent stays on it. A repeat changes nothing. */
export async function giveBack(room: Room, number: string, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (_db, ticket) => (ticket.state === 'waiting' ? null : {
    move: 'give back', happening: { kind: 'given back' }, sets: letGo(ticket, room.now().toISOString()),
  }))
  return showTicket(room, number, who)
}

/**
 * Gives back every ticket that a person has, because they leave the bench. In the caller's transaction; throws when a
 * ticket is changed by another at this moment, so that all are given back or none.
 * @param byId whoever makes them leave; null for the command line
 */
export async function giveBackAllOf(db: Db, personId: number, at: string, byId: number | null): Promise<void> {
  for (const ticket of await ticketsHeldBy(db, personId, ticketMoves['give back'].from)) {
    if (!await advanceTicket(db, ticket.id, ticket.version, { state: 'waiting', ...letGo(ticket, at) })) {
      throw new Error(`Ticket ${ticket.id} was changed by another while all of ${ticket.taker ?? 'a person'}'s were given back. Nothing was changed; do it again.`)
    }
    await writeDown(db, ticket.id, at, byId, { kind: 'given back' })
  }
}

/** One that waited for the asker or a laboratory begins to wait for the helpline now; the others have waited all along. */
function letGo(ticket: TicketWithTaker, at: string): TicketAdvance {
  return { taken_by: null, taken_at: null, ...(waitsForUs(ticketStateOf(ticket)) ? {} : { waits_since: at }) }
}
