import type { Selectable } from 'kysely'
import type { Db } from './store.js'
import type { ContactTable } from './tables.js'

export type ContactRow = Selectable<ContactTable>

/** Keeps how the asker can be reached about a ticket. */
export async function insertContact(db: Db, row: ContactRow): Promise<void> {
  await db.insertInto('contact').values(row).execute()
}

/** How the asker of a ticket can be reached, or undefined when it was not given or is erased. */
export function contactOf(db: Db, ticketId: number): Promise<ContactRow | undefined> {
  return db.selectFrom('contact').selectAll().where('ticket_id', '=', ticketId).executeTakeFirst()
}
