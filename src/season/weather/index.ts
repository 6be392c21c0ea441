export { ENDING_DRY_HOURS, scabHours, type WetSpell, wetSpells } from './apple-scab.js'
export { type Missing, missingBetween, type MissingHours } from './completeness.js'
export { completedBy, dailyFromHours } from './daily-from-hours.js'
export { type DayHours, EMPTY_DAY, hoursByDay } from './day-hours.js'
export { type Daylight, daylightAt } from './daylight.js'
export { addDays, datesFrom, daysBetween, lastOccurrence } from './days.js'
export { degreeDays, type Thresholds } from './degree-days.js'
export { type DatedNeed, firstDayOf, keyOf, needOf, needsOf, USUAL_NEED } from './degree-day-needs.js'
export { type DegreeDayNeed, type DegreeDayPoint, type DegreeDaySum, sumDegreeDays } from './degree-day-sum.js'
export {
  type BlightCriterion, blightDay, type BlightDay, type BlightWeather, blightWeather, HUTTON, meetsCriterion, SMITH,
} from './late-blight.js'
export { WET_FROM_HUMIDITY_PCT, type WetHours, wetHoursOf, wetness, type WetnessSource } from './leaf-wetness.js'
export {
  reasonWords, weatherCaps, weatherFactor, weatherFactors, type WeatherMove, weatherMoves, type WeatherOf, type WeatherReason,
} from './moves.js'
export { type RainSum, rainOver, WEEKLY_NEED_MM } from './rain.js'
export type { DailyRecord, HourlyRecord, Station } from './records.js'
export { type DatedSum, daysNeeded, HOURS_BACK_DAYS, SEVERITY_DAYS, sumFor, summarize, type WeatherSummary } from './summary.js'
export { type SeveritySum, sumSeverity, tomatoSeverity } from './tomato-severity.js'
export { celsiusOf, fahrenheitDaysOf, MM_PER_INCH } from './units.js'
export { wallinSeverity } from './wallin.js'
