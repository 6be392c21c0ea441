import { LRUCache } from 'lru-cache'
import type { Guide } from '../../guide/index.js'
import {
  addDays, daysNeeded, needsOf, summarize, type WeatherSummary,
} from '../../season/index.js'
import {
  lastWeatherRecords, weatherDays, weatherHours, weatherHoursAsDays, type WeatherStationRow, weatherStationsOf, weatherVersion,
} from '../../store/index.js'
import type { WeatherRoom } from './keep-weather.js'
import { dayOf, dayOfHours, hourOf } from './records-of-rows.js'
import { stationOf } from './station-of.js'

/** As much of a guide as weather needs: which sums of degree days its problems ask for. */
type WeatherGuide = Pick<Guide, 'problems' | 'hash'>

/** A region has a few dozen stations at most, and is asked about today; a summary is some 100 kB. */
const MOST_KEPT = 64

/**
 * What was reckoned of each store's stations, by guide, day and version of the records. The version is read anew each
 * time, so no process shows what another has since replaced.
 */
const kept = new WeakMap<object, LRUCache<string, WeatherSummary>>()

function keptOf(store: object): LRUCache<string, WeatherSummary> {
  const known = kept.get(store) ?? new LRUCache<string, WeatherSummary>({ max: MOST_KEPT })
  kept.set(store, known)
  return known
}

/**
 * The weather of a district as of a day, by the station of the district that has recorded last; null when it has none.
 * Of two that recorded as late, the first by name is taken.
 * @param asOf ISO date of the day it is; what is summed up ends the day before
 */
export async function weatherNow(room: WeatherRoom, guide: WeatherGuide, district: string, asOf: string): Promise<WeatherSummary | null> {
  const station = await freshestStation(room, district)
  return station === null ? null : stationWeather(room, guide, station, asOf)
}

/** The weather of one station as of a day. */
export async function stationWeather(room: WeatherRoom, guide: WeatherGuide, row: WeatherStationRow, asOf: string): Promise<WeatherSummary> {
  const version = await weatherVersion(room.db, row.id, room.now())
  if (version === null) return reckonWeather(room, guide, row, asOf)
  const key = JSON.stringify([stationOf(row), guide.hash, asOf, version])
  const known = keptOf(room.db).get(key)
  if (known !== undefined) return known
  const reckoned = await reckonWeather(room, guide, row, asOf)
  keptOf(room.db).set(key, reckoned)
  return reckoned
}

async function freshestStation({ db }: WeatherRoom, district: string): Promise<WeatherStationRow | null> {
  let best: { readonly row: WeatherStationRow; readonly last: string } | null = null
  for (const row of await weatherStationsOf(db, district)) {
    const { day, hour } = await lastWeatherRecords(db, row.id)
    const last = [day ?? '', hour?.slice(0, 10) ?? ''].sort().at(-1) ?? ''
    if (best === null || last > best.last) best = { row, last }
  }
  return best?.row ?? null
}

async function reckonWeather({ db }: WeatherRoom, guide: WeatherGuide, row: WeatherStationRow, asOf: string): Promise<WeatherSummary> {
  const needs = needsOf(guide)
  const first = daysNeeded(asOf, needs)
  const last = addDays(asOf, -1)
  const measured = await weatherDays(db, row.id, first.daily, last)
  const ofHours = await weatherHoursAsDays(db, row.id, first.daily, last)
  const hours = await weatherHours(db, row.id, first.hourly, last)
  return summarize(stationOf(row), asOf, measured.map(dayOf), hours.map(hourOf), needs, ofHours.map(dayOfHours))
}
