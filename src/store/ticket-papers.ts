import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type {
  CasebookCaseTable, LabResultTable, LabSampleTable, TicketNoteTable, TicketQuestionTable, TicketReplyTable, TreeSuggestionTable,
} from './tables.js'

/** Whoever did it, by name. */
interface By {
  readonly by: string
}
type TicketReplyRow = Selectable<TicketReplyTable> & By
type TicketNoteRow = Selectable<TicketNoteTable> & By
export type TicketQuestionRow = Selectable<TicketQuestionTable> & By
type LabSampleRow = Selectable<LabSampleTable> & By
type LabResultRow = Selectable<LabResultTable> & By
type CasebookCaseRow = Selectable<CasebookCaseTable> & By
type TreeSuggestionRow = Selectable<TreeSuggestionTable> & By

/** Adds an answer to those ever given. */
export async function appendReply(db: Db, row: Insertable<TicketReplyTable>): Promise<void> {
  await db.insertInto('ticket_reply').values(row).execute()
}

/** Every answer ever given on a ticket, first one first. */
export function repliesOf(db: Db, ticketId: number): Promise<TicketReplyRow[]> {
  return db.selectFrom('ticket_reply as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** Adds a note for colleagues. */
export async function appendNote(db: Db, row: Insertable<TicketNoteTable>): Promise<void> {
  await db.insertInto('ticket_note').values(row).execute()
}

/** A ticket's notes for colleagues, first one first. */
export function colleagueNotesOf(db: Db, ticketId: number): Promise<TicketNoteRow[]> {
  return db.selectFrom('ticket_note as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** Adds a question to the asker. */
export async function appendQuestion(db: Db, row: Insertable<TicketQuestionTable>): Promise<void> {
  await db.insertInto('ticket_question').values(row).execute()
}

/** Everything asked back on a ticket, first one first. */
export function questionsOf(db: Db, ticketId: number): Promise<TicketQuestionRow[]> {
  return db.selectFrom('ticket_question as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** The checks of everything asked back on the ticket of the case with this link, as kept: JSON, one text a question. */
export async function checksAskedBack(db: Db, link: string): Promise<string[]> {
  const rows = await db.selectFrom('case_file').innerJoin('ticket', 'ticket.case_id', 'case_file.id')
    .innerJoin('ticket_question as paper', 'paper.ticket_id', 'ticket.id')
    .select('paper.checks').where('case_file.link', '=', link).orderBy('paper.id').execute()
  return rows.map(({ checks }) => checks)
}

/** Marks a question as answered; the first time stays. */
export async function markQuestionAnswered(db: Db, id: number, at: string): Promise<void> {
  await db.updateTable('ticket_question').set({ answered_at: at }).where('id', '=', id).where('answered_at', 'is', null).execute()
}

/** Adds a sample sent to a laboratory. */
export async function appendSample(db: Db, row: Insertable<LabSampleTable>): Promise<void> {
  await db.insertInto('lab_sample').values(row).execute()
}

/** The samples of a ticket, first one first. */
export function samplesOf(db: Db, ticketId: number): Promise<LabSampleRow[]> {
  return db.selectFrom('lab_sample as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** Adds a laboratory's result. */
export async function appendResult(db: Db, row: Insertable<LabResultTable>): Promise<void> {
  await db.insertInto('lab_result').values(row).execute()
}

/** The laboratory results of a ticket, first one first. */
export function resultsOf(db: Db, ticketId: number): Promise<LabResultRow[]> {
  return db.selectFrom('lab_result as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** Adds a settled case to those kept for the casebook. */
export async function appendCasebookCase(db: Db, row: Insertable<CasebookCaseTable>): Promise<void> {
  await db.insertInto('casebook_case').values(row).execute()
}

/** Cases kept for the casebook, those of one ticket when one is given; first one first. */
export function casebookCases(db: Db, ticketId?: number): Promise<CasebookCaseRow[]> {
  const all = db.selectFrom('casebook_case as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').orderBy('paper.id')
  return (ticketId === undefined ? all : all.where('paper.ticket_id', '=', ticketId)).execute()
}

/** Adds a suggestion against the tree. */
export async function appendSuggestion(db: Db, row: Insertable<TreeSuggestionTable>): Promise<void> {
  await db.insertInto('tree_suggestion').values(row).execute()
}

/** Takes away the cases and suggestions kept from one ticket. False when there were none. */
export async function dropKeptFromTicket(db: Db, ticketId: number): Promise<boolean> {
  const cases = await db.deleteFrom('casebook_case').where('ticket_id', '=', ticketId).executeTakeFirstOrThrow()
  const suggestions = await db.deleteFrom('tree_suggestion').where('ticket_id', '=', ticketId).executeTakeFirstOrThrow()
  return cases.numDeletedRows + suggestions.numDeletedRows > 0n
}

/** The suggestions against the trees that came of one ticket, first one first. */
export function treeSuggestionsOf(db: Db, ticketId: number): Promise<TreeSuggestionRow[]> {
  return db.selectFrom('tree_suggestion as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').where('paper.ticket_id', '=', ticketId).orderBy('paper.id').execute()
}

/** Every suggestion against the trees, the newest first. */
export function treeSuggestions(db: Db, most: number): Promise<TreeSuggestionRow[]> {
  return db.selectFrom('tree_suggestion as paper').innerJoin('person', 'person.id', 'paper.person_id')
    .selectAll('paper').select('person.name as by').orderBy('paper.id', 'desc').limit(most).execute()
}
