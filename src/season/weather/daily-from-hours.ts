import type { DayHours } from './day-hours.js'
import type { DailyRecord } from './records.js'

/**
 * What the hours say of a whole day: lowest and highest temperature and rain, each only where all 24 hours have it. The
 * extremes of hourly values lie within the true ones, most often by less than a degree (common practice, no source).
 */
export function dailyFromHours(date: string, hours: DayHours): DailyRecord {
  const temperatures = whole(hours.map((hour) => hour?.temperatureC ?? null))
  const rains = whole(hours.map((hour) => hour?.rainMm ?? null))
  return {
    date,
    minC: temperatures === null ? null : Math.min(...temperatures),
    maxC: temperatures === null ? null : Math.max(...temperatures),
    rainMm: rains === null ? null : rains.reduce((sum, rain) => sum + rain, 0),
  }
}

/** A daily record with what it lacks taken from the day's hours. */
export function completedBy(record: DailyRecord, fromHours: DailyRecord): DailyRecord {
  // Lowest and highest are taken together: one measured and one of hourly values could stand the wrong way round.
  const own = record.minC !== null && record.maxC !== null
  return {
    date: record.date,
    minC: own ? record.minC : fromHours.minC ?? record.minC,
    maxC: own ? record.maxC : fromHours.maxC ?? record.maxC,
    rainMm: record.rainMm ?? fromHours.rainMm,
  }
}

function whole(values: readonly (number | null)[]): number[] | null {
  const known = values.filter((value) => value !== null)
  return known.length === values.length ? known : null
}
