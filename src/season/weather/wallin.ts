import type { DayHours } from './day-hours.js'

/**
 * Severity value of one humid spell for late blight of potato, 0 to 4: Wallin 1962, Am. Potato J. 39:306-312, as Krause,
 * Massie & Hyre 1975, Plant Dis. Reporter 59:95-98, use it. Hours from a university description of the modified version
 * (Baker, Kirk, Stein & Andresen 2002); its last column is continued as in the original, which is from memory.
 */
const BANDS: readonly { readonly toC: number; readonly hours: readonly number[] }[] = [
  { toC: 11.6, hours: [16, 19, 22, 25] },
  { toC: 15.0, hours: [13, 16, 19, 22] },
  { toC: 26.6, hours: [10, 13, 16, 19] },
]

/** Below it nothing counts, °C. */
const FROM_C = 7.2

/**
 * Severity value of a humid spell.
 * @param meanC mean temperature of the humid hours, °C
 * @param humidHours hours at 90 % relative humidity or more (80 % in the modified version)
 */
export function wallinSeverity(meanC: number, humidHours: number): number {
  if (meanC < FROM_C) return 0
  const band = BANDS.find(({ toC }) => meanC <= toC)
  return (band?.hours ?? []).filter((hours) => humidHours >= hours).length
}

/** Severity of the last days, at least: days with an unknown hour add nothing and are named. */
export interface WallinSum {
  readonly sum: number
  readonly openDays: readonly string[]
}

/** Hours count as humid from this relative humidity on, %. */
const HUMID_PCT = 90

/**
 * Sums severity values over days, each day's humid hours taken as one spell, as daily programs do; a spell over midnight
 * then counts as two, and for a little less.
 */
export function sumWallin(days: readonly { readonly date: string; readonly hours: DayHours }[]): WallinSum {
  let sum = 0
  const openDays: string[] = []
  for (const { date, hours } of days) {
    const known = hours.flatMap((hour) => (hour?.humidityPct == null || hour.temperatureC === null ? [] : [{ humidity: hour.humidityPct, celsius: hour.temperatureC }]))
    const humid = known.filter(({ humidity }) => humidity >= HUMID_PCT)
    if (known.length < hours.length) openDays.push(date)
    else if (humid.length > 0) sum += wallinSeverity(humid.reduce((all, { celsius }) => all + celsius, 0) / humid.length, humid.length)
  }
  return { sum, openDays }
}
