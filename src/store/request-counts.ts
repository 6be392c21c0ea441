import type { Db } from './db.js'

/** Counts one more request under this key until this time, and returns how many there are with it. In one statement. */
export async function countRequest(db: Db, key: string, until: string): Promise<number> {
  const { times } = await db.insertInto('request_count').values({ count_key: key, until, times: 1 })
    .onConflict((conflict) => conflict.columns(['until', 'count_key']).doUpdateSet((eb) => ({ times: eb('request_count.times', '+', 1) })))
    .returning('times').executeTakeFirstOrThrow()
  return times
}

/** Forgets what was counted until before this time. */
export async function forgetRequestCountsBefore(db: Db, now: string): Promise<void> {
  await db.deleteFrom('request_count').where('until', '<', now).execute()
}
