import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { WeatherStationTable } from './tables.js'

export type WeatherStationRow = Selectable<WeatherStationTable>

/** Keeps a new station. False, and nothing kept, when there is one of this name. */
export async function insertWeatherStation(db: Db, row: Insertable<WeatherStationTable>): Promise<boolean> {
  const { numInsertedOrUpdatedRows } = await db.insertInto('weather_station').values(row)
    .onConflict((conflict) => conflict.column('name').doNothing())
    .executeTakeFirstOrThrow()
  return numInsertedOrUpdatedRows === 1n
}

/** Every station, by name. */
export function weatherStations(db: Db): Promise<WeatherStationRow[]> {
  return db.selectFrom('weather_station').selectAll().orderBy('name').execute()
}

/** The stations of a district, by name. */
export function weatherStationsOf(db: Db, district: string): Promise<WeatherStationRow[]> {
  return db.selectFrom('weather_station').selectAll().where('district', '=', district).orderBy('name').execute()
}

/** The station of this name, or undefined. */
export function weatherStationByName(db: Db, name: string): Promise<WeatherStationRow | undefined> {
  return db.selectFrom('weather_station').selectAll().where('name', '=', name).executeTakeFirst()
}
