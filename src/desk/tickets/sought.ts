import type { Reading } from '../../engine/index.js'
import { colleagueNotesOf, type Db, keepTicketSeek, samplesOf, ticketById, type TicketWithTaker } from '../../store/index.js'
import { readCaseFile } from '../cases/read-case-file.js'
import { hostNamed, problemNamed } from '../guide-names.js'
import type { Room } from '../room.js'
import { caseOf } from './find-ticket.js'
import { replyFromText } from './reply.js'

/** Writes down anew what a ticket is found by. Called with every change of the ticket or its case. */
export async function keepSought(room: Room, db: Db, ticketId: number, known?: Reading): Promise<void> {
  const ticket = await ticketById(db, ticketId)
  if (ticket === undefined) return
  const { guide } = room.knowledge()
  const file = await caseOf(db, ticket)
  const reading = known ?? readCaseFile(guide, file)
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  const problem = problemOf(ticket, reading)
  const parts = [
    ...file.words, ticket.note, host?.name, ...(host?.called ?? []),
    problem === null ? null : problemNamed(guide, problem)?.name, ticket.reply === null ? null : replyFromText(ticket.reply).text,
    ...(await colleagueNotesOf(db, ticketId)).map(({ text }) => text),
    ...(await samplesOf(db, ticketId)).map(({ number }) => number),
  ]
  await keepTicketSeek(db, {
    ticket_id: ticketId, host: host?.id ?? null, problem, district: file.district,
    text: parts.filter((part) => part != null && part !== '').join('\n').toLowerCase(),
  })
}

/** The problem that a ticket was settled as, or the likeliest one so far. */
export function problemOf(ticket: Pick<TicketWithTaker, 'reply'>, reading: Pick<Reading, 'differential'>): string | null {
  if (ticket.reply !== null) return replyFromText(ticket.reply).problem
  return reading.differential[0]?.problem ?? null
}
