import type { Station } from '../../season/index.js'
import type { WeatherStationRow } from '../../store/index.js'

/** A station of the store as the season knows it. */
export function stationOf(row: WeatherStationRow): Station {
  return {
    id: row.name, name: row.title, district: row.district, latitude: row.latitude, longitude: row.longitude, clockMinutes: row.clock_minutes,
  }
}
