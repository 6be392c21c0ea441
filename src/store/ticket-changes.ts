import type { Insertable, Selectable } from 'kysely'
import { z } from 'zod'
import { announce } from './news.js'
import type { Db } from './store.js'
import type { TicketChangeTable } from './tables.js'

/** One line of a ticket's history with the name of the person, null when it was the asker. */
export type TicketChangeRow = Selectable<TicketChangeTable> & { readonly person: string | null }

const What = z.object({ kind: z.string() })

/** Adds one line to a ticket's history, and tells every process. There is no function that alters or removes one. */
export async function appendTicketChange(db: Db, row: Insertable<TicketChangeTable>): Promise<void> {
  await db.insertInto('ticket_change').values(row).execute()
  await announce(db, { ticket: row.ticket_id, what: What.parse(JSON.parse(row.what)).kind, person: row.person_id ?? null })
}

/** A ticket's history, first line first. */
export function ticketChanges(db: Db, ticketId: number): Promise<TicketChangeRow[]> {
  return db.selectFrom('ticket_change').leftJoin('person', 'person.id', 'ticket_change.person_id')
    .selectAll('ticket_change').select('person.name as person')
    .where('ticket_change.ticket_id', '=', ticketId)
    .orderBy('ticket_change.id').execute()
}
