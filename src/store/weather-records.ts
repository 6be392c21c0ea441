import { type Insertable, sql } from 'kysely'
import type { Db } from './store.js'
import type { WeatherDayTable, WeatherHourTable } from './tables.js'

type Measured<Row> = Omit<Row, 'station_id' | 'read_id'>

/**
 * Keeps days of a station, no day twice. A day that is there takes on the new values; where a new one is missing it keeps
 * the old one, so that a file with rain alone takes away no temperatures. Doing it again changes nothing.
 */
export async function keepWeatherDays(db: Db, stationId: number, readId: number, days: readonly Measured<Insertable<WeatherDayTable>>[]): Promise<void> {
  if (days.length === 0) return
  await db.insertInto('weather_day').values(days.map((day) => ({ ...day, station_id: stationId, read_id: readId })))
    .onConflict((conflict) => conflict.columns(['station_id', 'day']).doUpdateSet((eb) => ({
      min_c: eb.fn.coalesce('excluded.min_c', 'weather_day.min_c'), max_c: eb.fn.coalesce('excluded.max_c', 'weather_day.max_c'),
      rain_mm: eb.fn.coalesce('excluded.rain_mm', 'weather_day.rain_mm'), read_id: eb.ref('excluded.read_id'),
    })))
    .execute()
}

/** Keeps hours of a station, no hour twice, as `keepWeatherDays` does. */
export async function keepWeatherHours(db: Db, stationId: number, readId: number, hours: readonly Measured<Insertable<WeatherHourTable>>[]): Promise<void> {
  if (hours.length === 0) return
  await db.insertInto('weather_hour').values(hours.map((hour) => ({ ...hour, station_id: stationId, read_id: readId })))
    .onConflict((conflict) => conflict.columns(['station_id', 'hour']).doUpdateSet((eb) => ({
      temperature_c: eb.fn.coalesce('excluded.temperature_c', 'weather_hour.temperature_c'),
      humidity_pct: eb.fn.coalesce('excluded.humidity_pct', 'weather_hour.humidity_pct'),
      rain_mm: eb.fn.coalesce('excluded.rain_mm', 'weather_hour.rain_mm'),
      wet_minutes: eb.fn.coalesce('excluded.wet_minutes', 'weather_hour.wet_minutes'), read_id: eb.ref('excluded.read_id'),
    })))
    .execute()
}

/** A station's days from one date to another, both included, in order. */
export function weatherDays(db: Db, stationId: number, first: string, last: string): Promise<Measured<WeatherDayTable>[]> {
  return db.selectFrom('weather_day').select(['day', 'min_c', 'max_c', 'rain_mm'])
    .where('station_id', '=', stationId).where('day', '>=', first).where('day', '<=', last)
    .orderBy('day').execute()
}

/** A station's hours of the days from one date to another, both included, in order. */
export function weatherHours(db: Db, stationId: number, first: string, last: string): Promise<Measured<WeatherHourTable>[]> {
  return db.selectFrom('weather_hour').select(['hour', 'temperature_c', 'humidity_pct', 'rain_mm', 'wet_minutes'])
    .where('station_id', '=', stationId).where('hour', '>=', `${first}T00`).where('hour', '<=', `${last}T23`)
    .orderBy('hour').execute()
}

/** What the hours of a day add up to, with how many of them have each value. */
export interface DayOfHours {
  readonly day: string
  readonly min_c: number | null
  readonly max_c: number | null
  readonly rain_mm: number | null
  readonly temperatures: number
  readonly rains: number
}

/** A station's hours summed up by day, reckoned in the database. */
export async function weatherHoursAsDays(db: Db, stationId: number, first: string, last: string): Promise<DayOfHours[]> {
  const day = sql<string>`substr(hour, 1, 10)`
  const rows = await db.selectFrom('weather_hour')
    .select(({ fn }) => [
      day.as('day'), fn.min('temperature_c').as('min_c'), fn.max('temperature_c').as('max_c'), fn.sum<number | null>('rain_mm').as('rain_mm'),
      fn.count<number | string>('temperature_c').as('temperatures'), fn.count<number | string>('rain_mm').as('rains'),
    ])
    .where('station_id', '=', stationId).where('hour', '>=', `${first}T00`).where('hour', '<=', `${last}T23`)
    .groupBy(day).orderBy(day).execute()
  return rows.map((row) => ({ ...row, temperatures: Number(row.temperatures), rains: Number(row.rains) }))
}

/** The last day and the last hour that a station has recorded, or null. */
export interface LastRecords {
  readonly day: string | null
  readonly hour: string | null
}

/** When a station recorded last. */
export async function lastWeatherRecords(db: Db, stationId: number): Promise<LastRecords> {
  const day = await db.selectFrom('weather_day').select('day').where('station_id', '=', stationId).orderBy('day', 'desc').limit(1).executeTakeFirst()
  const hour = await db.selectFrom('weather_hour').select('hour').where('station_id', '=', stationId).orderBy('hour', 'desc').limit(1).executeTakeFirst()
  return { day: day?.day ?? null, hour: hour?.hour ?? null }
}
