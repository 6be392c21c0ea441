import type { DailyRecord, HourlyRecord } from '../../season/index.js'
import type { DayOfHours, weatherDays, weatherHours } from '../../store/index.js'

type DayRow = Awaited<ReturnType<typeof weatherDays>>[number]
type HourRow = Awaited<ReturnType<typeof weatherHours>>[number]

/** A day of the store as the season knows it. */
export const dayOf = ({ day, min_c, max_c, rain_mm }: DayRow): DailyRecord => ({ date: day, minC: min_c, maxC: max_c, rainMm: rain_mm })

/** An hour of the store as the season knows it. */
export const hourOf = (row: HourRow): HourlyRecord => (
  { hour: row.hour, temperatureC: row.temperature_c, humidityPct: row.humidity_pct, rainMm: row.rain_mm, wetMinutes: row.wet_minutes }
)

const HOURS_A_DAY = 24

/** A day's values only where every hour has them: nothing is made up for the others. */
export const dayOfHours = ({ day, min_c, max_c, rain_mm, temperatures, rains }: DayOfHours): DailyRecord => ({
  date: day, minC: temperatures === HOURS_A_DAY ? min_c : null, maxC: temperatures === HOURS_A_DAY ? max_c : null,
  rainMm: rains === HOURS_A_DAY ? rain_mm : null,
})
