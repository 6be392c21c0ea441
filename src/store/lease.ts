import { randomUUID } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { Tables } from './tables.js'

/** How long a lease holds after it was last renewed, in milliseconds: so long others wait for a process that died. */
const LEASE_MS = 60_000
const RENEW_MS = 20_000

/**
 * Does the work while holding a lease on its name, so that no other process on the file does it at the same time. False,
 * and nothing done, when another has the lease. For a database without locks that end with their connection.
 */
export async function withLease(db: Kysely<Tables>, name: string, work: () => Promise<void>): Promise<boolean> {
  const holder = randomUUID()
  if (!await takeLease(db, name, holder)) return false
  const renew = setInterval(() => {
    renewLease(db, name, holder).catch(() => undefined)
  }, RENEW_MS).unref()
  try {
    await work()
    return true
  } finally {
    clearInterval(renew)
    await db.updateTable('duty').set({ holder: null, held_until: null })
      .where('name', '=', name).where('holder', '=', holder).execute()
  }
}

/** In one statement, so that it is whole without a transaction. */
async function takeLease(db: Kysely<Tables>, name: string, holder: string): Promise<boolean> {
  const lease = { holder, held_until: leaseEnd() }
  const { numInsertedOrUpdatedRows } = await db.insertInto('duty').values({ name, begun_at: null, ...lease })
    .onConflict((conflict) => conflict.column('name').doUpdateSet(lease).where((eb) => eb.or([
      eb('duty.held_until', 'is', null), eb('duty.held_until', '<', new Date().toISOString()),
    ])))
    .executeTakeFirstOrThrow()
  return numInsertedOrUpdatedRows === 1n
}

async function renewLease(db: Kysely<Tables>, name: string, holder: string): Promise<void> {
  await db.updateTable('duty').set({ held_until: leaseEnd() }).where('name', '=', name).where('holder', '=', holder).execute()
}

const leaseEnd = (): string => new Date(Date.now() + LEASE_MS).toISOString()
