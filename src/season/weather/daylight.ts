import { getTimes } from 'suncalc'
import type { Station } from './records.js'

/** Sunrise and sunset of a day in hours by the station's clock, such as 5.25. */
export interface Daylight {
  readonly sunrise: number
  readonly sunset: number
}

/**
 * When the sun rises and sets at a station, by the suncalc library (its accuracy is about a minute). Null where it does
 * not on that day.
 */
export function daylightAt({ latitude, longitude, clockMinutes }: Pick<Station, 'latitude' | 'longitude' | 'clockMinutes'>): (date: string) => Daylight | null {
  const known = new Map<string, Daylight | null>()
  return (date) => {
    const before = known.get(date)
    if (before !== undefined) return before
    const midnight = Date.parse(date) - clockMinutes * 60_000
    const { sunrise, sunset } = getTimes(new Date(midnight + 12 * 3_600_000), latitude, longitude)
    const hours = (at: Date): number => (at.getTime() - midnight) / 3_600_000
    const light = sunrise === null || sunset === null ? null : { sunrise: hours(sunrise), sunset: hours(sunset) }
    known.set(date, light)
    return light
  }
}
