import type { Random } from '../../../engine/index.js'
import { addDays, type DailyRecord, datesFrom, type HourlyRecord } from '../../../season/index.js'

/** What a made-up station has recorded. */
export interface InventedWeather {
  readonly days: readonly DailyRecord[]
  /** Of the last days only. */
  readonly hours: readonly HourlyRecord[]
}

const DAY_MS = 86_400_000
const HOURS_KEPT_DAYS = 100
/** Of a hundred days and hours, so many were not recorded: a station is never whole. */
const MISSING_DAYS = 0.015
const MISSING_HOURS = 0.004

/**
 * Makes up the weather of a cool temperate valley. Invented, for the demonstration: yearly and daily waves with a wander
 * from day to day, and wet and dry days that follow their like.
 * @param first, last ISO dates, both included
 * @param height how much cooler the place is than the valley floor, °C
 */
export function inventWeather(random: Random, first: string, last: string, height: number): InventedWeather {
  const days: DailyRecord[] = []
  const hours: HourlyRecord[] = []
  const hoursFrom = addDays(last, 1 - HOURS_KEPT_DAYS)
  let wander = 0
  let isWet = false
  for (const date of datesFrom(first, last)) {
    const time = Date.parse(date)
    const ofYear = (time - Date.UTC(new Date(time).getUTCFullYear(), 0, 1)) / DAY_MS
    // Coldest about 20 January.
    const season = -Math.cos((2 * Math.PI * (ofYear - 20)) / 365.25)
    wander = 0.75 * wander + 2.2 * bell(random)
    isWet = random() < (isWet ? 0.6 : 0.27)
    const mean = 9.6 + 7.4 * season + wander - height
    const swing = (isWet ? 2.6 : 5) + 1.2 * season
    const rain = isWet ? Math.round(-Math.log(1 - random()) * 52) / 10 : 0
    const measured = random() >= MISSING_DAYS
    if (measured) days.push({ date, minC: tenth(mean - swing), maxC: tenth(mean + swing), rainMm: rain })
    if (date < hoursFrom) continue
    for (let hour = 0; hour < 24; hour++) {
      if (!measured || random() < MISSING_HOURS) continue
      const temperature = mean - swing * Math.cos((2 * Math.PI * (hour - 4)) / 24)
      const humidity = Math.min(100, Math.max(35, (isWet ? 91 : 76) - 3.1 * (temperature - mean) + 3 * bell(random)))
      hours.push({
        hour: `${date}T${String(hour).padStart(2, '0')}`, temperatureC: tenth(temperature), humidityPct: Math.round(humidity),
        rainMm: null, wetMinutes: humidity >= 92 ? 60 : humidity >= 88 ? 25 : 0,
      })
    }
  }
  return { days, hours }
}

/** A number about 0 with a spread of about 1: the sum of twelve even draws. */
function bell(random: Random): number {
  let sum = -6
  for (let draw = 0; draw < 12; draw++) sum += random()
  return sum
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10
}
