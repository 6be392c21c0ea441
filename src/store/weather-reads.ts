import type { Selectable } from 'kysely'
import type { Db } from './store.js'
import type { WeatherReadTable } from './tables.js'

export type WeatherReadRow = Selectable<WeatherReadTable>

/** Notes that a file or an address is being read for a station; returns the reading's number. */
export async function beginWeatherRead(db: Db, stationId: number, origin: string, at: string): Promise<number> {
  const { id } = await db.insertInto('weather_read')
    .values({ station_id: stationId, origin, begun_at: at, ended_at: null, outcome: null, kept: 0, faults: 0, why: null })
    .returning('id').executeTakeFirstOrThrow()
  return id
}

/** Notes what came of a reading. */
export async function endWeatherRead(
  db: Db, id: number, end: Pick<WeatherReadRow, 'kept' | 'faults' | 'why'> & { readonly outcome: 'kept' | 'refused' | 'failed'; readonly ended_at: string },
): Promise<void> {
  await db.updateTable('weather_read').set(end).where('id', '=', id).execute()
}

/** The last reading of each station that has any, and of each origin within it, newest first. */
export function lastWeatherReads(db: Db): Promise<WeatherReadRow[]> {
  return db.selectFrom('weather_read').selectAll()
    .where('id', 'in', (of) => of.selectFrom('weather_read').select(({ fn }) => fn.max('id').as('id')).groupBy(['station_id', 'origin']))
    .orderBy('id', 'desc').execute()
}

/** Forgets readings that ended before this time and brought nothing: no record names them. */
export async function forgetEmptyWeatherReads(db: Db, before: string): Promise<void> {
  await db.deleteFrom('weather_read').where('kept', '=', 0).where('ended_at', '<', before).execute()
}

/** So many of the last readings are looked at: more than ever go on at once. */
const LOOKED_AT = 20
/** A reading that has not ended after this long was broken off, milliseconds. */
const BROKEN_OFF_MS = 3_600_000

/**
 * Changes whenever a station's records may have changed, whichever process read them: what was reckoned under one version
 * holds as long as the version is the same. Null while a reading goes on, when nothing holds for long.
 */
export async function weatherVersion(db: Db, stationId: number, now: Date): Promise<string | null> {
  const reads = await db.selectFrom('weather_read').select(['id', 'begun_at', 'ended_at'])
    .where('station_id', '=', stationId).orderBy('id', 'desc').limit(LOOKED_AT).execute()
  if (reads.some(({ begun_at, ended_at }) => ended_at === null && now.getTime() - Date.parse(begun_at) < BROKEN_OFF_MS)) return null
  const ended = reads.map(({ ended_at }) => ended_at ?? '').sort().at(-1) ?? ''
  return `${reads[0]?.id ?? 0}|${ended}`
}
