import type { Db, Store } from './store.js'

/** A piece of work that is done by one process at a time, however many are running. */
export interface Duty {
  readonly name: string
  /** How often it is due, in milliseconds; 0 whenever it is asked for. */
  readonly everyMs: number
}

/**
 * Does a duty unless another process is at it or it was begun less than its time ago. True when it was done here. When
 * the work throws, the fault goes to the caller and the duty is due again at its next time.
 */
export async function runDuty(store: Pick<Store, 'db' | 'exclusively'>, duty: Duty, now: Date, work: () => Promise<void>): Promise<boolean> {
  if (!await isDue(store.db, duty, now)) return false
  let done = false
  await store.exclusively(duty.name, async () => {
    // Another may have done it between the look and the lock.
    if (!await isDue(store.db, duty, now)) return
    await begin(store.db, duty.name, now)
    await work()
    done = true
  })
  return done
}

async function isDue(db: Db, { name, everyMs }: Duty, now: Date): Promise<boolean> {
  const row = await db.selectFrom('duty').select('begun_at').where('name', '=', name).executeTakeFirst()
  return row?.begun_at == null || Date.parse(row.begun_at) + everyMs <= now.getTime()
}

async function begin(db: Db, name: string, now: Date): Promise<void> {
  const begun_at = now.toISOString()
  await db.insertInto('duty').values({ name, begun_at, holder: null, held_until: null })
    .onConflict((conflict) => conflict.column('name').doUpdateSet({ begun_at }))
    .execute()
}
