import { beginWeatherRead, endWeatherRead, forgetEmptyWeatherReads, weatherStations, type WeatherStationRow } from '../../store/index.js'
import { fetchWeather } from './fetch-weather.js'
import { type KeptWeather, keepWeather, type WeatherRoom } from './keep-weather.js'

/** What stands in an address for the station's id. */
export const STATION_MARK = '{station}'

/** So long it can be seen what came of a reading that brought nothing. */
const EMPTY_READS_KEPT_MS = 30 * 86_400_000

/**
 * Fetches every station's records from each address and keeps them; lines with faults are left out and counted, so that
 * one bad line does not stop the weather. What came of each is noted. One station's trouble keeps no other from its own.
 * @param addresses with `{station}` where the station's id belongs
 * @throws Error naming each station that brought nothing, once all were tried
 */
export async function pullWeather(room: WeatherRoom, addresses: readonly string[], fetchFile = fetchWeather): Promise<void> {
  await forgetEmptyWeatherReads(room.db, new Date(room.now().getTime() - EMPTY_READS_KEPT_MS).toISOString())
  const troubles: string[] = []
  for (const station of await weatherStations(room.db)) {
    for (const address of addresses) {
      const trouble = await pullOne(room, station, address.replaceAll(STATION_MARK, encodeURIComponent(station.name)), fetchFile)
      if (trouble !== null) troubles.push(`${station.name}: ${trouble}`)
    }
  }
  if (troubles.length > 0) throw new Error(`The weather could not be pulled whole. ${troubles.join(' ')}`)
}

async function pullOne(room: WeatherRoom, station: WeatherStationRow, address: string, fetchFile: typeof fetchWeather): Promise<string | null> {
  const origin = withoutSecrets(address)
  let pieces: readonly Uint8Array[]
  try {
    pieces = await fetchFile(address)
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault)
    const at = room.now().toISOString()
    await endWeatherRead(room.db, await beginWeatherRead(room.db, station.id, origin, at), { outcome: 'failed', kept: 0, faults: 0, ended_at: at, why })
    return why
  }
  return troubleOf(await keepWeather(room, station, { origin, open: () => pieces }, true))
}

function troubleOf({ isRefused, faults: { first: [fault], count } }: KeptWeather): string | null {
  if (fault === undefined) return null
  return `${isRefused ? 'The file was refused' : `${count} ${count === 1 ? 'fault was' : 'faults were'} left out`}; line ${fault.line}: ${fault.message}`
}

/** An address without name, password and query. */
function withoutSecrets(address: string): string {
  const { origin, pathname } = new URL(address)
  return `${origin}${pathname}`
}
