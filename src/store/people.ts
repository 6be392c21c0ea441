import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { PersonTable } from './tables.js'

export type PersonRow = Selectable<PersonTable>

/** Keeps a new person and returns their row number. A name that was ever used is refused by the store. */
export async function insertPerson(db: Db, row: Insertable<PersonTable>): Promise<number> {
  const { id } = await db.insertInto('person').values(row).returning('id').executeTakeFirstOrThrow()
  return id
}

/** The person with this name, removed or not, or undefined. */
export function personByName(db: Db, name: string): Promise<PersonRow | undefined> {
  return db.selectFrom('person').selectAll().where('name', '=', name).executeTakeFirst()
}

/** The person with this row number, removed or not, or undefined. */
export function personById(db: Db, id: number): Promise<PersonRow | undefined> {
  return db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst()
}

/** How many people the store has ever had, those removed included. */
export async function countPeople(db: Db): Promise<number> {
  const row = await db.selectFrom('person').select((eb) => eb.fn.countAll().as('count')).executeTakeFirstOrThrow()
  return Number(row.count)
}

/** Ends a person's account. The row stays, because histories refer to it. */
export async function markPersonRemoved(db: Db, id: number, at: string): Promise<void> {
  await db.updateTable('person').set({ removed_at: at }).where('id', '=', id).where('removed_at', 'is', null).execute()
}

/** Everyone whose account has not ended, by name. */
export function peopleNow(db: Db): Promise<PersonRow[]> {
  return db.selectFrom('person').selectAll().where('removed_at', 'is', null).orderBy('name').execute()
}

/** Keeps the hash of a new password. */
export async function keepPassword(db: Db, id: number, hash: string): Promise<void> {
  await db.updateTable('person').set({ password_hash: hash }).where('id', '=', id).execute()
}

/** Gives a person another role. */
export async function keepRole(db: Db, id: number, role: string): Promise<void> {
  await db.updateTable('person').set({ role }).where('id', '=', id).execute()
}
