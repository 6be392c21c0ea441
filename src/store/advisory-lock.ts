import { createHash } from 'node:crypto'
import { type Kysely, sql } from 'kysely'
import type { Tables } from './tables.js'

/**
 * Does the work while holding PostgreSQL's lock on its name, so that no other process does it at the same time. False,
 * and nothing done, when another has it. The lock keeps one connection for itself and ends with it, at the latest when
 * this process does.
 */
export function withAdvisoryLock(db: Kysely<Tables>, name: string, work: () => Promise<void>): Promise<boolean> {
  const lock = lockNumber(name)
  return db.connection().execute(async (own) => {
    const { rows } = await sql<{ held: boolean }>`select pg_try_advisory_lock(${lock}) as held`.execute(own)
    if (rows[0]?.held !== true) return false
    try {
      await work()
      return true
    } finally {
      await sql`select pg_advisory_unlock(${lock})`.execute(own)
    }
  })
}

/** A number of 64 bits for a name. */
function lockNumber(name: string): string {
  return createHash('sha256').update(`frondline ${name}`).digest().readBigInt64BE().toString()
}
