import type { Colleagues, HandOn, NoteForColleagues, SettleTicket, TicketView } from '../../../shared/index.js'
import { Role } from '../../../shared/index.js'
import { appendNote, appendReply, colleagueNotesOf, type Db, peopleNow, type TicketWithTaker } from '../../store/index.js'
import { dropKept, keepFromSettling } from '../casebook/keep.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { caseOf, findTicket } from './find-ticket.js'
import { writeDown } from './happening.js'
import { moveTicket } from './make-move.js'
import { replyText, saysTheSame } from './reply.js'
import { keepSought } from './sought.js'
import { ticketView } from './ticket-views.js'
import { whyNot } from './ticket-moves.js'

/** One ticket, or a fault. */
export async function showTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  return ticketView(room, await findTicket(room.db, number), who)
}

/** Takes a waiting ticket. Of several who try, one gets it; for that one a repeat changes nothing. */
export async function takeTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (_db, ticket) => {
    if (ticket.state === 'taken' && ticket.taken_by === who.id) return null
    return {
      move: 'take', sets: { taken_by: who.id, taken_at: room.now().toISOString() }, happening: { kind: 'taken' },
    }
  })
  return showTicket(room, number, who)
}

/** Hands a ticket to a colleague at the bench; it stays in its state. */
export async function handOn(room: Room, number: string, { to }: HandOn, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    const colleague = (await benchPeople(db)).find(({ name }) => name === to)
    if (colleague === undefined) throw new DeskFault('UNKNOWN_COLLEAGUE', { words: { name: to } })
    if (ticket.taken_by === colleague.id && ticket.state !== 'waiting') return null
    return {
      move: 'hand on', happening: { kind: 'handed on', to },
      sets: { taken_by: colleague.id, taken_at: room.now().toISOString() },
    }
  })
  return showTicket(room, number, who)
}

/** Everyone at the bench to whom a ticket may be handed. */
export async function listColleagues(room: Room): Promise<Colleagues> {
  return { people: (await benchPeople(room.db)).map(({ name, role }) => ({ name, role: Role.parse(role) })) }
}

/**
 * Settles a ticket with the specialist's answer; a waiting one is taken first. Settling again with the same answer
 * changes nothing.
 */
export async function settleTicket(room: Room, number: string, answer: SettleTicket, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    if (ticket.state === 'settled' && ticket.reply !== null && saysTheSame(ticket.reply, answer)) return null
    const fault = whyNot('settle', ticket, who)
    if (fault !== null) throw fault
    return answering(room, db, ticket, answer, who, 'settle')
  })
  return showTicket(room, number, who)
}

/**
 * Changes the answer of a settled ticket; the one before stays visible beside it. What was kept for the casebook and the
 * tree from the one before is dropped, unless it is kept again with this one. The same answer changes nothing.
 */
export async function amendTicket(room: Room, number: string, answer: SettleTicket, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    if (ticket.state === 'settled' && ticket.reply !== null && saysTheSame(ticket.reply, answer)) return null
    const fault = whyNot('amend', ticket, who)
    if (fault !== null) throw fault
    return answering(room, db, ticket, answer, who, 'amend')
  })
  return showTicket(room, number, who)
}

/**
 * Takes an answer back and opens the ticket again, held by whoever does it. The answer stays in the history; what was
 * kept from it for the casebook and the tree is dropped.
 */
export async function reopenTicket(room: Room, number: string, who: Member): Promise<TicketView> {
  const at = room.now().toISOString()
  await moveTicket(room, number, who, async (db, ticket) => {
    const fault = whyNot('reopen', ticket, who)
    if (fault !== null) throw fault
    await dropKept(db, ticket.id, at, who.id)
    return {
      move: 'reopen', happening: { kind: 'reopened' },
      sets: { taken_by: who.id, taken_at: at, settled_at: null, reply: null, waits_since: at },
    }
  })
  return showTicket(room, number, who)
}

/** Writes a note that only the helpline's people see. The same note twice in a row by one person is one note. */
export async function noteForColleagues(room: Room, number: string, { text }: NoteForColleagues, who: Member): Promise<TicketView> {
  await room.db.transaction().execute(async (db) => {
    const ticket = await findTicket(db, number)
    const last = (await colleagueNotesOf(db, ticket.id)).at(-1)
    if (last !== undefined && last.person_id === who.id && last.text === text) return
    const at = room.now().toISOString()
    await appendNote(db, { ticket_id: ticket.id, at, person_id: who.id, text })
    await writeDown(db, ticket.id, at, who.id, { kind: 'noted' })
    await keepSought(room, db, ticket.id)
  })
  return showTicket(room, number, who)
}

async function answering(
  room: Room, db: Db, ticket: TicketWithTaker, answer: SettleTicket, who: Member, move: 'settle' | 'amend',
) {
  const { guide } = room.knowledge()
  const at = room.now().toISOString()
  const reply = replyText(guide, answer, at)
  const { revision } = await caseOf(db, ticket)
  await appendReply(db, { ticket_id: ticket.id, at, person_id: who.id, reply })
  await dropKept(db, ticket.id, at, who.id)
  await keepFromSettling(room, db, ticket, answer, who)
  return {
    move, sets: { reply, ...(move === 'settle' ? { settled_at: at } : {}) },
    happening: { kind: move === 'settle' ? 'settled' as const : 'amended' as const, revision, guide: guide.hash, outcome: answer.outcome.kind },
  }
}

async function benchPeople(db: Db) {
  return (await peopleNow(db)).filter(({ role }) => role !== 'volunteer')
}
