import {
  advanceTicket, casebookCases, caseByLink, caseChanges, colleagueNotesOf, contactOf, contactReadsOf, type Db, ERASED, eraseContact, forgetAskerOfReports, forgetMailWords, keepTicketSeek,
  markPhotosRemoved, overwriteCaseWords, overwriteReply, overwriteTicketWords, photosEverOf, questionsOf, repliesOf, resultsOf,
  samplesOf, ticketByCase, ticketChanges, type TicketWithTaker, treeSuggestionsOf,
} from '../../store/index.js'
import { caseFileFromRow } from '../cases/case-file.js'
import type { Room } from '../room.js'
import { historyLine, writeDown } from '../tickets/happening.js'
import { replyFromText } from '../tickets/reply.js'
import { openContact } from './contacts.js'

/** As much of the room as these need: no guide. */
export type PrivacyRoom = Pick<Room, 'db' | 'now' | 'randomBytes' | 'keys'>

/** Everything kept about the asker with this link, as plain JSON; null when no case has the link. */
export async function exportAsker({ db, keys }: PrivacyRoom, link: string): Promise<object | null> {
  const row = await caseByLink(db, link)
  if (row === undefined) return null
  const { words, evidence, askedOn, district, openedAt } = caseFileFromRow(row)
  const changes = await caseChanges(db, row.id)
  const photos = await photosEverOf(db, row.id)
  const ticket = await ticketByCase(db, row.id)
  return {
    link, openedAt, askedOn, district, words, evidence,
    changes: changes.map(({ at, kind, content }) => ({ at, kind, content: JSON.parse(content) as unknown })),
    photos: photos.map(({ number, width, height, bytes, at, removed_at }) => ({ number, width, height, bytes, at, removedAt: removed_at })),
    ticket: ticket === undefined ? null : await ticketData(db, keys, ticket),
  }
}

async function ticketData(db: Db, keys: Room['keys'], ticket: TicketWithTaker): Promise<object> {
  const contact = await contactOf(db, ticket.id)
  return {
    ticket: String(ticket.id), state: ticket.state, openedAt: ticket.opened_at, note: ticket.note,
    contact: contact === undefined ? null : openContact(keys, contact),
    contactReadBy: await contactReadsOf(db, ticket.id),
    questions: (await questionsOf(db, ticket.id)).map(({ at, by, text, checks }) => ({ at, by, text, checks: JSON.parse(checks) as unknown })),
    replies: (await repliesOf(db, ticket.id)).map(({ by, reply }) => ({ by, ...replyFromText(reply) })),
    samples: (await samplesOf(db, ticket.id)).map(({ at, by, number, packed }) => ({ at, by, number, packed })),
    results: (await resultsOf(db, ticket.id)).map(({ at, by, number, text }) => ({ at, by, number, text })),
    colleagueNotes: (await colleagueNotesOf(db, ticket.id)).map(({ at, by, text }) => ({ at, by, text })),
    casebook: (await casebookCases(db, ticket.id)).map(({ at, by, words, content }) => ({ at, by, words, case: JSON.parse(content) as unknown })),
    suggestions: (await treeSuggestionsOf(db, ticket.id)).map(({ at, by, kind, content }) => ({ at, by, kind, suggestion: JSON.parse(content) as unknown })),
    history: (await ticketChanges(db, ticket.id)).map(historyLine),
  }
}

/**
 * Erases everything that the asker with this link wrote, sent or left, and all that was written back, what was kept of it
 * for the casebook and the tree among it; what was copied into trees/casebook is beyond its reach. The link is dead
 * afterwards. What was seen on the plant stays, and with it what the season counts, without anybody to whom it belongs. False when no case has the link.
 */
export async function eraseAsker(room: PrivacyRoom, link: string): Promise<boolean> {
  const deadLink = Buffer.from(room.randomBytes(24)).toString('base64url')
  return room.db.transaction().execute(async (db) => {
    const row = await caseByLink(db, link)
    if (row === undefined) return false
    const at = room.now().toISOString()
    await overwriteCaseWords(db, row.id, deadLink, at)
    await markPhotosRemoved(db, row.id, at)
    await forgetAskerOfReports(db, row.id)
    const ticket = await ticketByCase(db, row.id)
    if (ticket !== undefined) await eraseTicket(db, ticket, at)
    return true
  })
}

async function eraseTicket(db: Db, ticket: TicketWithTaker, at: string): Promise<void> {
  await eraseContact(db, ticket.id)
  await overwriteTicketWords(db, ticket.id)
  await forgetMailWords(db, ticket.id)
  for (const { id, reply } of await repliesOf(db, ticket.id)) await overwriteReply(db, id, withoutText(reply))
  await advanceTicket(db, ticket.id, ticket.version, {
    ...(ticket.reply === null ? {} : { reply: withoutText(ticket.reply) }),
    // Nobody is left to be answered.
    ...(ticket.state === 'settled' || ticket.state === 'merged' ? {} : { state: 'settled', settled_at: at }),
  })
  await keepTicketSeek(db, { ticket_id: ticket.id, text: '', host: null, problem: null, district: null })
  await writeDown(db, ticket.id, at, null, { kind: 'erased' })
}

function withoutText(reply: string): string {
  return JSON.stringify({ ...replyFromText(reply), text: ERASED })
}
