import type { TicketRow, TicketView } from '../../../shared/index.js'
import {
  casebookCases, colleagueNotesOf, contactOf, type Db, questionsOf, relatedTo, repliesOf, ticketChanges, ticketsById, ticketsMergedInto, ticketsWithMark,
  type TicketWithTaker,
} from '../../store/index.js'
import { readCaseFile } from '../cases/read-case-file.js'
import { hostNamed, problemNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { likelyLines } from '../views/likely-lines.js'
import { plantGuesses } from '../views/plant-words.js'
import { showCase } from '../views/show-case.js'
import { lastAnswered, questionView } from './question-view.js'
import { caseOf } from './find-ticket.js'
import { historyLine } from './happening.js'
import { replyFromText } from './reply.js'
import { sampleViews } from './sample-views.js'
import { problemOf } from './sought.js'
import { standingOf } from './standing.js'
import { openMoves, ticketStateOf } from './ticket-moves.js'

/** A problem is called the likeliest only from this share on: below even odds it is more likely another. */
const LEADS_FROM = 0.5

/** One row of the list of tickets. */
export async function ticketRow(room: Room, ticket: TicketWithTaker): Promise<TicketRow> {
  const { guide } = room.knowledge()
  const file = await caseOf(room.db, ticket)
  const reading = readCaseFile(guide, file)
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  const leads = (reading.differential[0]?.probability ?? 0) >= LEADS_FROM
  const problem = ticket.reply !== null || leads ? problemOf(ticket, reading) : null
  const settledAs = ticket.reply === null ? null : replyFromText(ticket.reply).problemName
  return {
    ticket: String(ticket.id), state: ticketStateOf(ticket), openedAt: ticket.opened_at, words: file.words[0] ?? '',
    host: host?.id ?? null, hostName: host?.name ?? null, district: file.district,
    plantGuesses: host === null ? plantGuesses(guide, file) : [],
    language: file.language, urgent: ticket.urgent > 0, takenBy: ticket.taker, ...standingOf(guide, ticket, room.now()),
    problemName: settledAs ?? (problem === null ? null : problemNamed(guide, problem)?.name ?? null),
  }
}

/** The whole ticket on one sheet. */
export async function ticketView(room: Room, ticket: TicketWithTaker, who: Member): Promise<TicketView> {
  const { guide } = room.knowledge()
  const { db } = room
  const file = await caseOf(db, ticket)
  const rows = async (tickets: readonly TicketWithTaker[]) => Promise.all(tickets.map((one) => ticketRow(room, one)))
  const answered = await lastAnswered(db, file.id)
  const kept = (await casebookCases(db, ticket.id)).at(-1)
  const contact = await contactOf(db, ticket.id)
  return {
    ticket: String(ticket.id), state: ticketStateOf(ticket), openedAt: ticket.opened_at, takenBy: ticket.taker,
    urgent: ticket.urgent > 0, ...standingOf(guide, ticket, room.now()), note: ticket.note, contactGiven: contact !== undefined,
    case: await showCase(room, file, who),
    differential: likelyLines(guide, readCaseFile(guide, file).differential, file.plausible),
    history: (await ticketChanges(db, ticket.id)).map(historyLine),
    replies: await replyViews(db, ticket),
    questions: (await questionsOf(db, ticket.id)).map((row) => ({ ...questionView(guide, file, row, answered), by: row.by })),
    samples: await sampleViews(db, ticket.id),
    colleagueNotes: (await colleagueNotesOf(db, ticket.id)).map(({ text, by, at }) => ({ text, by, at })),
    related: await rows(await ticketsById(db, await relatedTo(db, ticket.id))),
    merged: await rows(await ticketsMergedInto(db, ticket.id)),
    mergedInto: ticket.merged_into === null ? null : String(ticket.merged_into),
    sameAsker: contact === undefined ? [] : await rows(await ticketsById(db, await ticketsWithMark(db, contact))),
    casebook: kept === undefined ? null : { by: kept.by, at: kept.at },
    moves: openMoves(ticket, who),
  }
}

async function replyViews(db: Db, ticket: TicketWithTaker): Promise<TicketView['replies']> {
  const replies = await repliesOf(db, ticket.id)
  return replies.map(({ reply, by }, place) => ({
    ...replyFromText(reply), by, stands: ticket.reply !== null && place === replies.length - 1,
  }))
}
