import type { Db } from './store.js'
import type { PersonRow } from './people.js'
import type { SessionTable } from './tables.js'

/** Keeps a new session. */
export async function insertSession(db: Db, row: SessionTable): Promise<void> {
  await db.insertInto('session').values(row).execute()
}

/** The person whose session this is, if it has not run out at `now` and the person is not removed. */
export function personBySession(db: Db, tokenHash: string, now: string): Promise<PersonRow | undefined> {
  return db.selectFrom('session').innerJoin('person', 'person.id', 'session.person_id')
    .selectAll('person')
    .where('session.token_hash', '=', tokenHash).where('session.expires_at', '>', now)
    .where('person.removed_at', 'is', null)
    .executeTakeFirst()
}

/** Ends one session. */
export async function deleteSession(db: Db, tokenHash: string): Promise<void> {
  await db.deleteFrom('session').where('token_hash', '=', tokenHash).execute()
}

/** Ends every session of a person. */
export async function deleteSessionsOf(db: Db, personId: number): Promise<void> {
  await db.deleteFrom('session').where('person_id', '=', personId).execute()
}

/** Removes the sessions that have run out by `now`. */
export async function deleteSpentSessions(db: Db, now: string): Promise<void> {
  await db.deleteFrom('session').where('expires_at', '<=', now).execute()
}

/** Ends every session of a person but the one with this token. */
export async function deleteOtherSessionsOf(db: Db, personId: number, tokenHash: string): Promise<void> {
  await db.deleteFrom('session').where('person_id', '=', personId).where('token_hash', '!=', tokenHash).execute()
}

/** How many sessions each person has that have not run out by `now`. */
export async function sessionCounts(db: Db, now: string): Promise<ReadonlyMap<number, number>> {
  const rows = await db.selectFrom('session').select((eb) => ['person_id', eb.fn.countAll().as('count')])
    .where('expires_at', '>', now).groupBy('person_id').execute()
  return new Map(rows.map((row) => [row.person_id, Number(row.count)]))
}
