import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { TicketTable } from './tables.js'

export type TicketRecord = Selectable<TicketTable>
/** A ticket's row with the name of the specialist who has it. */
export type TicketWithTaker = TicketRecord & { readonly taker: string | null }

/** Opens a ticket and returns its number. A second ticket for the same case is refused by the store. */
export async function insertTicket(db: Db, row: Insertable<TicketTable>): Promise<number> {
  const { id } = await db.insertInto('ticket').values(row).returning('id').executeTakeFirstOrThrow()
  return id
}

/** The ticket of a case, or undefined. */
export function ticketByCase(db: Db, caseId: number): Promise<TicketWithTaker | undefined> {
  return withTaker(db).where('ticket.case_id', '=', caseId).executeTakeFirst()
}

/** The ticket with this number, or undefined. */
export function ticketById(db: Db, id: number): Promise<TicketWithTaker | undefined> {
  return withTaker(db).where('ticket.id', '=', id).executeTakeFirst()
}

/** Waiting or taken tickets in order of need: urgent first, then oldest. */
export function ticketsInNeed(db: Db, state: 'waiting' | 'taken', most: number): Promise<TicketWithTaker[]> {
  return withTaker(db).where('ticket.state', '=', state)
    .orderBy('ticket.urgent', 'desc').orderBy('ticket.opened_at').orderBy('ticket.id')
    .limit(most).execute()
}

/** Settled tickets, the last settled first. */
export function settledTickets(db: Db, most: number): Promise<TicketWithTaker[]> {
  return withTaker(db).where('ticket.state', '=', 'settled')
    .orderBy('ticket.settled_at', 'desc').orderBy('ticket.id', 'desc')
    .limit(most).execute()
}

/** Gives a waiting ticket to a person. False when it is no longer waiting; then nothing is changed. */
export async function takeTicket(db: Db, id: number, personId: number, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('ticket')
    .set({ state: 'taken', taken_by: personId, taken_at: at })
    .where('id', '=', id).where('state', '=', 'waiting')
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Settles a ticket that this person has. False when it is settled or not theirs; then nothing is changed. */
export async function settleTicket(
  db: Db, id: number, personId: number, reply: string, at: string,
): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('ticket')
    .set({ state: 'settled', reply, settled_at: at })
    .where('id', '=', id).where('state', '=', 'taken').where('taken_by', '=', personId)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Marks a ticket urgent, with the reason. A ticket never stops being urgent. */
export async function markUrgent(db: Db, id: number, why: string): Promise<void> {
  await db.updateTable('ticket').set({ urgent: 1, why }).where('id', '=', id).where('urgent', '=', 0).execute()
}

function withTaker(db: Db) {
  return db.selectFrom('ticket').leftJoin('person', 'person.id', 'ticket.taken_by')
    .selectAll('ticket').select('person.name as taker')
}
