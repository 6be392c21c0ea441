import type { Db } from './store.js'
import { dropKeptFromTicket } from './ticket-papers.js'

/** Stands where something that a person wrote was erased. */
export const ERASED = '(erased)'

/**
 * Writes over every word that people wrote about one case, the asker first of all, and gives it a link that nobody has.
 * What was seen on the plant, when and in which district stays: it is about no person, and the season needs it. The only
 * function that alters a history; the histories themselves, who did what and when, stay.
 */
export async function overwriteCaseWords(db: Db, caseId: number, link: string, at: string): Promise<void> {
  await db.updateTable('case_file').set({ link, words: JSON.stringify([ERASED]), matched: NOTHING_HEARD, call_closed_at: at })
    .where('id', '=', caseId).execute()
  for (const [kind, content] of WORDED_CHANGES) {
    await db.updateTable('case_change').set({ content: JSON.stringify(content) })
      .where('case_id', '=', caseId).where('kind', '=', kind).execute()
  }
}

/** Writes over every word that people wrote about one ticket, and takes away what was kept of it for others to read. */
export async function overwriteTicketWords(db: Db, ticketId: number): Promise<void> {
  await db.updateTable('ticket').set({ note: null }).where('id', '=', ticketId).execute()
  await db.updateTable('ticket_note').set({ text: ERASED }).where('ticket_id', '=', ticketId).execute()
  await db.updateTable('ticket_question').set({ text: ERASED }).where('ticket_id', '=', ticketId).execute()
  await db.updateTable('lab_sample').set({ packed: ERASED }).where('ticket_id', '=', ticketId).execute()
  await db.updateTable('lab_result').set({ text: ERASED }).where('ticket_id', '=', ticketId).execute()
  await dropKeptFromTicket(db, ticketId)
  await db.deleteFrom('contact').where('ticket_id', '=', ticketId).execute()
}

/** Forgets what is said of a ticket's letters: what a mail server answers often quotes the address. */
export async function forgetMailWords(db: Db, ticketId: number): Promise<void> {
  await db.updateTable('outbox').set({ why: null }).where('ticket_id', '=', ticketId).where('why', 'is not', null).execute()
}

/** Writes over one answer ever given. */
export async function overwriteReply(db: Db, id: number, reply: string): Promise<void> {
  await db.updateTable('ticket_reply').set({ reply }).where('id', '=', id).execute()
}

const NOTHING_HEARD = JSON.stringify({ hosts: [], entries: [], confidence: 1, outOfScope: false })

/** What is left of the changes that hold words. */
const WORDED_CHANGES: readonly (readonly [kind: string, content: object])[] = [
  ['opened', { words: ERASED, district: null }], ['words', { words: ERASED }], ['note', { text: ERASED }],
]
