import type { Db } from './db.js'

/** How many tickets there are in each state that has any. */
export async function ticketCounts(db: Db): Promise<{ state: string; count: number }[]> {
  return db.selectFrom('ticket').select(({ fn }) => ['state', fn.countAll<number>().as('count')]).groupBy('state').execute()
}
