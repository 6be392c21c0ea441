import { z } from 'zod'
import { STATION_MARK } from '../desk/index.js'

/** Where weather records are pulled from. */
export interface WeatherSettings {
  /** Addresses of CSV files, each with `{station}` where a station's id belongs. */
  readonly addresses: readonly string[]
  readonly everyMinutes: number
}

const LOOPBACK = /^(localhost|127(?:\.\d{1,3}){3}|\[::1\])$/

/** HTTPS, or plain HTTP on this machine alone: whoever could change the records could move every answer. */
function isFitting(address: string): boolean {
  if (!address.includes(STATION_MARK) || !URL.canParse(address)) return false
  const { protocol, hostname } = new URL(address)
  return protocol === 'https:' || (protocol === 'http:' && LOOPBACK.test(hostname))
}

// What is wrong is said without the address: it may hold a key.
const addresses = z.string().transform((text) => text.trim().split(/\s+/)).refine(
  (listed) => listed.every(isFitting),
  `Expected addresses of CSV files with ${STATION_MARK} where the station's id belongs and blanks between, such as https://weather.example/${STATION_MARK}/hourly.csv; http only on this machine.`,
)

/** The variable that says where weather is pulled from. */
export const weatherVariables = { FRONDLINE_WEATHER_URL: addresses.optional() }

/** Where weather is pulled from, or null when no address is set. */
export function weatherSettingsOf(given: { readonly FRONDLINE_WEATHER_URL?: readonly string[] | undefined; readonly FRONDLINE_WEATHER_MINUTES: number }): WeatherSettings | null {
  return given.FRONDLINE_WEATHER_URL === undefined ? null : { addresses: given.FRONDLINE_WEATHER_URL, everyMinutes: given.FRONDLINE_WEATHER_MINUTES }
}
