import type { OtherTicket, TicketView } from '../../../shared/index.js'
import { raiseTicket, relateTickets, ticketById, ticketsMergedInto, unrelateTickets } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { findTicket } from './find-ticket.js'
import { writeDown } from './happening.js'
import { moveTicket } from './make-move.js'
import { showTicket } from './ticket-desk.js'
import { whyNot } from './ticket-moves.js'

/**
 * Merges a repeat into another ticket, usually of the same asker: the repeat is closed, its asker is shown the other's
 * answer, and the other, unless it is settled, becomes as urgent as the repeat was. Refused for a ticket into which
 * others were merged, and into one that is merged itself.
 */
export async function mergeTicket(room: Room, number: string, { ticket: into }: OtherTicket, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    const whole = await findTicket(db, into)
    if (ticket.state === 'merged' && ticket.merged_into === whole.id) return null
    const fault = whyNot('merge', ticket, who)
    if (fault !== null) throw fault
    if (whole.id === ticket.id) throw new DeskFault('TICKET_ITSELF')
    if (whole.state === 'merged') throw new DeskFault('TICKET_MERGED', { words: { into: String(whole.merged_into) } })
    if ((await ticketsMergedInto(db, ticket.id)).length > 0) throw new DeskFault('TICKET_HAS_REPEATS')
    const at = room.now().toISOString()
    if (whole.urgent < ticket.urgent && whole.state !== 'settled') {
      await raiseTicket(db, whole.id, ticket.urgent, ticket.why)
      await writeDown(db, whole.id, at, who.id, { kind: 'urgent', why: ticket.why })
    }
    await writeDown(db, whole.id, at, who.id, { kind: 'took in', other: ticket.id })
    return {
      move: 'merge', happening: { kind: 'merged', other: whole.id },
      sets: { merged_into: whole.id, taken_by: null, taken_at: null },
    }
  })
  return showTicket(room, number, who)
}

/** Takes a merged ticket apart again: it waits as if it had never been merged. */
export async function unmergeTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    const fault = whyNot('unmerge', ticket, who)
    if (fault !== null) throw fault
    const whole = ticket.merged_into === null ? undefined : await ticketById(db, ticket.merged_into)
    if (whole === undefined) throw new Error(`Ticket ${ticket.id} is merged into no ticket.`)
    await writeDown(db, whole.id, room.now().toISOString(), who.id, { kind: 'let go', other: ticket.id })
    return { move: 'unmerge', happening: { kind: 'unmerged', other: whole.id }, sets: { merged_into: null } }
  })
  return showTicket(room, number, who)
}

/** Notes on both that two tickets have to do with each other; anyone at the bench may, in every state. */
export function linkTicket(room: Room, number: string, body: OtherTicket, who: Member): Promise<TicketView> {
  return relating(room, number, body, who, relateTickets, 'related')
}

/** Takes such a note back. */
export function unlinkTicket(room: Room, number: string, body: OtherTicket, who: Member): Promise<TicketView> {
  return relating(room, number, body, who, unrelateTickets, 'unrelated')
}

async function relating(
  room: Room, number: string, body: OtherTicket, who: Member, change: typeof relateTickets, kind: 'related' | 'unrelated',
): Promise<TicketView> {
  await room.db.transaction().execute(async (db) => {
    const one = await findTicket(db, number)
    const other = await findTicket(db, body.ticket)
    if (one.id === other.id) throw new DeskFault('TICKET_ITSELF')
    if (!await change(db, one.id, other.id)) return
    const at = room.now().toISOString()
    await writeDown(db, one.id, at, who.id, { kind, other: other.id })
    await writeDown(db, other.id, at, who.id, { kind, other: one.id })
  })
  return showTicket(room, number, who)
}
