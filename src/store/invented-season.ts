import type { Insertable } from 'kysely'
import type { Db } from './store.js'
import type { InventedCountTable } from './tables.js'

/** Rows of one statement: databases take some ten thousand values in one. */
const AT_ONCE = 500

/** Keeps reports that were made up for the demonstration. */
export async function keepInventedCounts(db: Db, rows: readonly Insertable<InventedCountTable>[]): Promise<void> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    await db.insertInto('invented_count').values(rows.slice(from, from + AT_ONCE)).execute()
  }
}

/** Whether anything in the store was made up for the demonstration. */
export async function hasInventedSeason(db: Db): Promise<boolean> {
  return await db.selectFrom('invented_count').select('week').limit(1).executeTakeFirst() !== undefined
    || await db.selectFrom('presence_change').select('id').where('invented', '=', 1).limit(1).executeTakeFirst() !== undefined
    || await db.selectFrom('weather_station').select('id').where('invented', '=', 1).limit(1).executeTakeFirst() !== undefined
}

/** Takes away everything that was made up, and nothing else. */
export async function removeInventedSeason(db: Db): Promise<void> {
  await db.deleteFrom('invented_count').execute()
  await db.deleteFrom('weekly_note').where('invented', '=', 1).execute()
  await db.deleteFrom('presence_change').where('invented', '=', 1).execute()
  const stations = await db.selectFrom('weather_station').select('id').where('invented', '=', 1).execute()
  for (const { id } of stations) {
    for (const table of ['weather_hour', 'weather_day', 'weather_read'] as const) await db.deleteFrom(table).where('station_id', '=', id).execute()
    await db.deleteFrom('weather_station').where('id', '=', id).execute()
  }
}
