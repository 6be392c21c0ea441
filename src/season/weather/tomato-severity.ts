import type { WetHours } from './leaf-wetness.js'

/**
 * Hours of wet leaves from which a day counts 1, 2, 3 and 4, by the mean temperature of the wet hours. Madden,
 * Pennypacker & MacNab 1978, Phytopathology 68:1354-1358, for early blight of tomato; used since for Septoria leaf spot and
 * anthracnose too. The hours are from memory, and agree with the published program of the Norwegian Institute of Bioeconomy
 * Research for the same model, which also has the bands meet without a gap, as here: 13 up to 18 °C and so on.
 */
const BANDS: readonly { readonly fromC: number; readonly belowC: number; readonly hours: readonly number[] }[] = [
  { fromC: 13, belowC: 18, hours: [7, 16, 21] },
  { fromC: 18, belowC: 21, hours: [4, 9, 16, 23] },
  { fromC: 21, belowC: 26, hours: [3, 6, 13, 21] },
  { fromC: 26, belowC: 30, hours: [4, 9, 16, 23] },
]

/**
 * Daily severity value of leaf blights of tomato, 0 to 4.
 * @param meanC mean temperature of the wet hours, °C; null when none was wet
 * @param wetHours leaf-wet hours of the day, 0 to 24
 */
export function tomatoSeverity(meanC: number | null, wetHours: number): number {
  if (meanC === null) return 0
  const band = BANDS.find(({ fromC, belowC }) => meanC >= fromC && meanC < belowC)
  return (band?.hours ?? []).filter((hours) => wetHours >= hours).length
}

/** Severity of several days, at least: days with missing hours add nothing and are named. */
export interface SeveritySum {
  readonly sum: number
  readonly days: readonly { readonly date: string; readonly value: number }[]
  /** Days with an hour of which too little is known. */
  readonly openDays: readonly string[]
}

/** Sums the severity values of days whose hours are all known. */
export function sumSeverity(days: readonly WetHours[]): SeveritySum {
  const whole = days.filter(({ unknownHours }) => unknownHours === 0)
    .map(({ date, meanC, hours }) => ({ date, value: tomatoSeverity(meanC, hours) }))
  return {
    sum: whole.reduce((sum, { value }) => sum + value, 0), days: whole,
    openDays: days.filter(({ unknownHours }) => unknownHours > 0).map(({ date }) => date),
  }
}
