import type { SettleTicket, TicketList, TicketView } from '../../../shared/index.js'
import {
  appendTicketChange, type Db, settledTickets, settleTicket as settleRow, takeTicket as takeRow, ticketById,
  ticketsInNeed, type TicketWithTaker,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { replyText, saysTheSame } from './reply.js'
import { caseOf, type TicketHappening, ticketRow, ticketView } from './ticket-views.js'

/** Most rows of one list. */
const MOST_ROWS = 200

/** Waiting and taken tickets in order of need, urgent first and then oldest; settled ones with the last settled first. */
export async function listTickets(room: Room, state: 'waiting' | 'taken' | 'settled'): Promise<TicketList> {
  const tickets = state === 'settled'
    ? await settledTickets(room.db, MOST_ROWS) : await ticketsInNeed(room.db, state, MOST_ROWS)
  return { tickets: await Promise.all(tickets.map((ticket) => ticketRow(room, ticket))) }
}

/** One ticket, or a fault. */
export async function showTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  return ticketView(room, await findTicket(room.db, number), who)
}

/** Takes a waiting ticket. Of several who try, one gets it; for that one a repeat changes nothing. */
export async function takeTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  await room.db.transaction().execute(async (db) => {
    const ticket = await findTicket(db, number)
    if (ticket.state === 'settled') throw new DeskFault('TICKET_SETTLED')
    await holdTicket(room, db, ticket, who)
  })
  return showTicket(room, number, who)
}

/**
 * Settles a ticket with the specialist's answer; a waiting one is taken first. Settling again with the same answer
 * changes nothing.
 */
export async function settleTicket(room: Room, number: string, answer: SettleTicket, who: Member): Promise<TicketView> {
  await room.db.transaction().execute(async (db) => {
    const ticket = await findTicket(db, number)
    if (ticket.reply !== null) {
      if (saysTheSame(ticket.reply, answer)) return
      throw new DeskFault('TICKET_SETTLED')
    }
    const { guide } = room.knowledge()
    const at = room.now().toISOString()
    const reply = replyText(guide, answer, at)
    await holdTicket(room, db, ticket, who)
    if (!await settleRow(db, ticket.id, who.id, reply, at)) throw new DeskFault('TICKET_SETTLED')
    const { revision } = await caseOf(db, ticket)
    await writeDown(db, ticket.id, at, who, { kind: 'settled', revision, guide: guide.hash })
  })
  return showTicket(room, number, who)
}

/** Makes sure that this person has the ticket, or throws TICKET_TAKEN naming who has. */
async function holdTicket(room: Room, db: Db, ticket: TicketWithTaker, who: Member): Promise<void> {
  const at = room.now().toISOString()
  if (ticket.state === 'waiting' && await takeRow(db, ticket.id, who.id, at)) {
    return writeDown(db, ticket.id, at, who, { kind: 'taken' })
  }
  const now = await ticketById(db, ticket.id)
  if (now?.taken_by !== who.id) throw new DeskFault('TICKET_TAKEN', { words: { who: now?.taker ?? 'someone else' } })
}

async function findTicket(db: Db, number: string): Promise<TicketWithTaker> {
  const ticket = await ticketById(db, Number(number))
  if (ticket === undefined) throw new DeskFault('TICKET_NOT_FOUND')
  return ticket
}

async function writeDown(
  db: Db, ticketId: number, at: string, who: Member, happening: TicketHappening,
): Promise<void> {
  await appendTicketChange(db, { ticket_id: ticketId, at, person_id: who.id, what: JSON.stringify(happening) })
}
