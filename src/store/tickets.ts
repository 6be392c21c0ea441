import type { Insertable, Selectable, Updateable } from 'kysely'
import { madeOutOnce } from './made-out-once.js'
import type { Db } from './store.js'
import type { TicketTable } from './tables.js'

type TicketRecord = Selectable<TicketTable>
/** A ticket's row with the name of the specialist who has it. */
export type TicketWithTaker = TicketRecord & { readonly taker: string | null }

/** Opens a ticket and returns its number. A second ticket for the same case is refused by the store. */
export async function insertTicket(db: Db, row: Insertable<TicketTable>): Promise<number> {
  const { id } = await db.insertInto('ticket').values(row).returning('id').executeTakeFirstOrThrow()
  return id
}

/** The ticket of a case, or undefined. */
export async function ticketByCase(db: Db, caseId: number): Promise<TicketWithTaker | undefined> {
  return (await byCase(db, [caseId]))[0]
}

const byCase = madeOutOnce((db) => withTaker(db).where('ticket.case_id', '=', 0))

/** The ticket with this number, or undefined. */
export function ticketById(db: Db, id: number): Promise<TicketWithTaker | undefined> {
  return withTaker(db).where('ticket.id', '=', id).executeTakeFirst()
}

/** The tickets with these numbers, by number. */
export async function ticketsById(db: Db, ids: readonly number[]): Promise<TicketWithTaker[]> {
  return ids.length === 0 ? [] : withTaker(db).where('ticket.id', 'in', ids).orderBy('ticket.id').execute()
}

/** The repeats that were merged into this ticket. */
export function ticketsMergedInto(db: Db, id: number): Promise<TicketWithTaker[]> {
  return withTaker(db).where('ticket.merged_into', '=', id).orderBy('ticket.id').execute()
}

/** The tickets that a person has in one of these states, by number. */
export function ticketsHeldBy(db: Db, personId: number, states: readonly string[]): Promise<TicketWithTaker[]> {
  return withTaker(db).where('ticket.taken_by', '=', personId).where('ticket.state', 'in', states).orderBy('ticket.id').execute()
}

/** What one change may alter in a ticket's row. */
export type TicketAdvance = Omit<Updateable<TicketTable>, 'id' | 'case_id' | 'version' | 'opened_at'>

/** Changes a ticket that is still at this version. False when somebody else was first; then nothing is changed. */
export async function advanceTicket(db: Db, id: number, version: number, advance: TicketAdvance): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('ticket').set({ ...advance, version: version + 1 })
    .where('id', '=', id).where('version', '=', version)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Raises a ticket's urgency to this level, with the reason. It never goes down. */
export async function raiseTicket(db: Db, id: number, level: number, why: string): Promise<void> {
  await db.updateTable('ticket').set({ urgent: level, why }).where('id', '=', id).where('urgent', '<', level).execute()
}

/** The ticket's row with its taker's name; searches begin from this. */
export function withTaker(db: Db) {
  return db.selectFrom('ticket').leftJoin('person', 'person.id', 'ticket.taken_by')
    .selectAll('ticket').select('person.name as taker')
}
