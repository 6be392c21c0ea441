import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { PresenceChangeTable } from './tables.js'

/** What was said of a watch problem in a district, with the name of whoever said it. */
export type PresenceChangeRow = Selectable<PresenceChangeTable> & { readonly by: string }

/** Adds a word on a watch problem. There is no function that alters or removes one. */
export async function appendPresenceChange(db: Db, row: Insertable<PresenceChangeTable>): Promise<void> {
  await db.insertInto('presence_change').values(row).execute()
}

/** Everything ever said of watch problems, in the order in which it was said. */
export function presenceChanges(db: Db): Promise<PresenceChangeRow[]> {
  return db.selectFrom('presence_change').innerJoin('person', 'person.id', 'presence_change.person_id')
    .selectAll('presence_change').select('person.name as by')
    .orderBy('presence_change.id').execute()
}

/** What was said last of one watch problem in one district, or undefined. */
export function lastPresenceChange(db: Db, problem: string, district: string): Promise<Selectable<PresenceChangeTable> | undefined> {
  return db.selectFrom('presence_change').selectAll().where('problem', '=', problem).where('district', '=', district)
    .orderBy('id', 'desc').limit(1).executeTakeFirst()
}
