import { addDays, type Missing, missingBetween, hoursByDay, dailyFromHours, completedBy, type Station } from '../../season/index.js'
import {
  insertWeatherStation, lastWeatherReads, lastWeatherRecords, type LastRecords, weatherDays, weatherHours, type WeatherReadRow, weatherStations,
} from '../../store/index.js'
import type { WeatherRoom } from './keep-weather.js'
import { dayOf, hourOf } from './records-of-rows.js'
import { stationOf } from './station-of.js'

/** Keeps a new station. False, and nothing kept, when its id is taken. */
export function addWeatherStation({ db }: Pick<WeatherRoom, 'db'>, station: Station): Promise<boolean> {
  return insertWeatherStation(db, {
    name: station.id, title: station.name, district: station.district, latitude: station.latitude, longitude: station.longitude,
    clock_minutes: station.clockMinutes,
  })
}

/** How fresh a station's records are, and what is missing among the last thirty days. */
export interface StationState {
  readonly station: Station
  readonly last: LastRecords
  readonly missing: Missing
  /** The last reading of each file or address, newest first. */
  readonly reads: readonly WeatherReadRow[]
}

/** Over so many last days missing records are named. */
export const WATCHED_DAYS = 30

/** Every station with the state of its records, by id. */
export async function listWeatherStations({ db, now }: WeatherRoom): Promise<StationState[]> {
  const yesterday = addDays(now().toISOString().slice(0, 10), -1)
  const first = addDays(yesterday, 1 - WATCHED_DAYS)
  const reads = await lastWeatherReads(db)
  const states: StationState[] = []
  for (const row of await weatherStations(db)) {
    const hours = hoursByDay((await weatherHours(db, row.id, first, yesterday)).map(hourOf))
    const days = new Map((await weatherDays(db, row.id, first, yesterday)).map((day) => [day.day, dayOf(day)]))
    for (const [date, ofDay] of hours) {
      days.set(date, completedBy(days.get(date) ?? { date, minC: null, maxC: null, rainMm: null }, dailyFromHours(date, ofDay)))
    }
    states.push({
      station: stationOf(row), last: await lastWeatherRecords(db, row.id), missing: missingBetween(days, hours, first, yesterday),
      reads: reads.filter(({ station_id }) => station_id === row.id),
    })
  }
  return states
}
