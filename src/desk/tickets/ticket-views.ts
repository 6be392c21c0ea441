import { z } from 'zod'
import type { TicketRow, TicketView } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import {
  caseById, contactOf, type ContactRow, type Db, type TicketChangeRow, ticketChanges, type TicketWithTaker,
} from '../../store/index.js'
import { type CaseFile, caseFileFromRow } from '../cases/case-file.js'
import { readCaseFile } from '../cases/read-case-file.js'
import { hostNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { likelyLines } from '../views/likely-lines.js'
import { showCase } from '../views/show-case.js'
import { ticketStateOf } from './ticket-state.js'
import { waitingWords } from './waiting.js'

/** One line of a ticket's history as it is kept. */
export const TicketHappening = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('opened'), why: z.string().nullable() }),
  z.object({ kind: z.literal('urgent'), why: z.string() }),
  z.object({ kind: z.literal('taken') }),
  /** With the revision and the guide that the specialist had before them. */
  z.object({ kind: z.literal('settled'), revision: z.number(), guide: z.string() }),
])
export type TicketHappening = z.infer<typeof TicketHappening>

/** One row of the list of tickets. */
export async function ticketRow(room: Room, ticket: TicketWithTaker): Promise<TicketRow> {
  const { guide } = room.knowledge()
  const file = await caseOf(room.db, ticket)
  const { host: hostId } = readCaseFile(guide, file)
  const host = hostId === null ? null : hostNamed(guide, hostId)
  return {
    ticket: String(ticket.id), state: ticketStateOf(ticket), openedAt: ticket.opened_at, words: file.words[0] ?? '',
    host: host?.id ?? null, hostName: host?.name ?? null, district: file.district,
    urgent: ticket.urgent === 1, why: whyHere(guide, ticket, room.now()), takenBy: ticket.taker,
  }
}

/** The whole ticket on one sheet. */
export async function ticketView(room: Room, ticket: TicketWithTaker, who: Member): Promise<TicketView> {
  const { guide } = room.knowledge()
  const file = await caseOf(room.db, ticket)
  const contact = await contactOf(room.db, ticket.id)
  const history = await ticketChanges(room.db, ticket.id)
  return {
    ticket: String(ticket.id), state: ticketStateOf(ticket), openedAt: ticket.opened_at, takenBy: ticket.taker,
    urgent: ticket.urgent === 1, why: whyHere(guide, ticket, room.now()), note: ticket.note,
    contact: contact === undefined ? null : contactView(contact),
    case: await showCase(room, file, who),
    differential: likelyLines(guide, readCaseFile(guide, file).differential),
    history: history.map(historyLine),
  }
}

/** The case behind a ticket. */
export async function caseOf(db: Db, ticket: Pick<TicketWithTaker, 'id' | 'case_id'>): Promise<CaseFile> {
  const row = await caseById(db, ticket.case_id)
  if (row === undefined) throw new Error(`Ticket ${ticket.id} has no case ${ticket.case_id}.`)
  return caseFileFromRow(row)
}

function whyHere({ region }: Guide, ticket: TicketWithTaker, now: Date): string {
  if (ticket.settled_at !== null) return `Settled on ${ticket.settled_at.slice(0, 10)}`
  if (ticket.urgent === 1) return ticket.why
  return waitingWords(ticket.opened_at, now, region.targets.answerWithinHours)
}

function contactView({ name, email, phone }: ContactRow): NonNullable<TicketView['contact']> {
  return {
    ...(name === null ? {} : { name }), ...(email === null ? {} : { email }), ...(phone === null ? {} : { phone }),
  }
}

function historyLine({ at, person, what }: TicketChangeRow): TicketView['history'][number] {
  return { at, by: person, what: happeningWords(TicketHappening.parse(JSON.parse(what))) }
}

function happeningWords(happening: TicketHappening): string {
  switch (happening.kind) {
    case 'opened': return happening.why === null ? 'Handed over' : `Handed over as urgent. ${happening.why}`
    case 'urgent': return `Became urgent. ${happening.why}`
    case 'taken': return 'Taken'
    case 'settled': return 'Settled'
  }
}
