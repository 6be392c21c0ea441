import type { DayHours } from './day-hours.js'
import type { HourlyRecord } from './records.js'

/**
 * Leaves are taken as wet at this relative humidity, %, where no sensor measures it: Sentelhas et al. 2008, Agric. For.
 * Meteorol. 148:392-400, compare this estimate with sensors (citation from memory). It does well under open sky in mild
 * climates, and is a guess in dry ones and under cover.
 */
export const WET_FROM_HUMIDITY_PCT = 90

/** From so many minutes on a measured hour counts as wet: half of it, as hours are counted whole (common practice, no source). */
const WET_FROM_MINUTES = 30

/** How wetness is known. */
export type WetnessSource = 'measured' | 'estimated'

/** Whether leaves were wet in an hour, and how that is known; null where it is not. */
export function wetness(hour: HourlyRecord | null): { readonly isWet: boolean; readonly source: WetnessSource } | null {
  if (hour === null) return null
  if (hour.wetMinutes !== null) return { isWet: hour.wetMinutes >= WET_FROM_MINUTES, source: 'measured' }
  if (hour.humidityPct !== null) return { isWet: hour.humidityPct >= WET_FROM_HUMIDITY_PCT, source: 'estimated' }
  return null
}

/** Leaf-wet hours of one day. */
export interface WetHours {
  readonly date: string
  /** Hours known to be wet, 0 to 24. */
  readonly hours: number
  /** Mean temperature of the wet hours whose temperature is known, °C; null when there is none. */
  readonly meanC: number | null
  /** 'both' when a sensor failed for part of the day; null when nothing is known. */
  readonly source: WetnessSource | 'both' | null
  /** Hours of which it is not known whether leaves were wet, or how warm a wet one was. */
  readonly unknownHours: number
}

/** Counts the leaf-wet hours of a day. */
export function wetHoursOf(date: string, day: DayHours): WetHours {
  let hours = 0
  let unknownHours = 0
  let sum = 0
  let warm = 0
  const sources = new Set<WetnessSource>()
  for (const hour of day) {
    const known = wetness(hour)
    if (known === null) {
      unknownHours++
      continue
    }
    sources.add(known.source)
    if (!known.isWet) continue
    hours++
    if (hour?.temperatureC == null) unknownHours++
    else {
      sum += hour.temperatureC
      warm++
    }
  }
  const [source = null, other] = sources
  return { date, hours, meanC: warm === 0 ? null : sum / warm, source: other === undefined ? source : 'both', unknownHours }
}
