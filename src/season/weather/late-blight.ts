import type { DayHours } from './day-hours.js'
import { addDays } from './days.js'

/** A two-day rule for weather in which late blight of potato and tomato can infect. */
export interface BlightCriterion {
  readonly name: 'Hutton' | 'Smith'
  /** Each of the two days stays at or above it, °C. */
  readonly leastMinC: number
  /** Each of the two days has so many hours and more at this humidity. */
  readonly leastHumidHours: number
  readonly humidityPct: number
}

/** The criterion in use in Great Britain since 2017 (Agriculture and Horticulture Development Board; Dancey et al., James Hutton Institute). */
export const HUTTON: BlightCriterion = { name: 'Hutton', leastMinC: 10, leastHumidHours: 6, humidityPct: 90 }

/** What it replaced: Smith 1956, Plant Pathology 5:83-87. A variant with 10 hours on the first day is printed too. */
export const SMITH: BlightCriterion = { name: 'Smith', leastMinC: 10, leastHumidHours: 11, humidityPct: 90 }

/** What the criteria ask of a day. */
export interface BlightDay {
  readonly date: string
  /** Lowest temperature, °C; null when not known. */
  readonly minC: number | null
  /** Lowest of the hourly temperatures that are known, °C: the day was at least as cold. Null when none is. */
  readonly coldestKnownC: number | null
  /** Hours known to be humid enough, 0 to 24. */
  readonly humidHours: number
  /** Hours whose humidity is not known, 0 to 24. */
  readonly unknownHours: number
}

/** Reads a day for a criterion. */
export function blightDay(date: string, minC: number | null, hours: DayHours, humidityPct = HUTTON.humidityPct): BlightDay {
  const temperatures = hours.flatMap((hour) => hour?.temperatureC ?? [])
  const humidities = hours.map((hour) => hour?.humidityPct ?? null)
  return {
    date, minC, coldestKnownC: temperatures.length === 0 ? null : Math.min(...temperatures),
    humidHours: humidities.filter((humidity) => humidity !== null && humidity >= humidityPct).length,
    unknownHours: humidities.filter((humidity) => humidity === null).length,
  }
}

/** Whether one day meets its half of the criterion; null when missing records leave it open. */
export function meetsCriterion({ minC, coldestKnownC, humidHours, unknownHours }: BlightDay, criterion: BlightCriterion): boolean | null {
  // The day's own measure counts before hourly values, which may be means over the hour.
  if ((minC ?? coldestKnownC ?? Infinity) < criterion.leastMinC) return false
  if (humidHours + unknownHours < criterion.leastHumidHours) return false
  return minC !== null && humidHours >= criterion.leastHumidHours ? true : null
}

/** Days on which the criterion came true, and days on which it may have. */
export interface BlightWeather {
  /** The second day of each two days running that meet the criterion. */
  readonly days: readonly string[]
  /** Second days of which it is not known, because records are missing. */
  readonly openDays: readonly string[]
}

/** Looks for two days running that meet the criterion. Days that are not in the list are not known. */
export function blightWeather(days: readonly BlightDay[], criterion: BlightCriterion): BlightWeather {
  const met = new Map(days.map((day) => [day.date, meetsCriterion(day, criterion)]))
  const pairs = days.map(({ date }) => ({ date, halves: [met.get(addDays(date, -1)) ?? null, met.get(date) ?? null] }))
  return {
    days: pairs.filter(({ halves }) => halves.every((half) => half === true)).map(({ date }) => date),
    openDays: pairs.filter(({ halves }) => halves.includes(null) && !halves.includes(false)).map(({ date }) => date),
  }
}
