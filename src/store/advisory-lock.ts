import { createHash } from 'node:crypto'
import pg from 'pg'
import { connectionConfig } from './postgres.js'

/**
 * Does the work while holding PostgreSQL's lock on its name, so that no other process does it at the same time. False,
 * and nothing done, when another has it. The lock is on a connection of its own and ends with it, at the latest when
 * this process does.
 */
export async function withAdvisoryLock(url: string, name: string, work: () => Promise<void>): Promise<boolean> {
  const client = new pg.Client(connectionConfig(url))
  // Said by the next query; without a listener it would end the process.
  client.on('error', () => undefined)
  await client.connect()
  try {
    const { rows } = await client.query<{ held: boolean }>('select pg_try_advisory_lock($1) as held', [lockNumber(name)])
    if (rows[0]?.held !== true) return false
    await work()
    return true
  } finally {
    await client.end().catch(() => undefined)
  }
}

/** A number of 64 bits for a name. */
function lockNumber(name: string): string {
  return createHash('sha256').update(`frondline ${name}`).digest().readBigInt64BE().toString()
}
