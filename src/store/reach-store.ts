import { sql } from 'kysely'
import type { Db } from './db.js'

/** Asks the database for something that costs it nothing. Rejects when it does not answer. */
export async function reachStore(db: Db): Promise<void> {
  await sql`select 1`.execute(db)
}
