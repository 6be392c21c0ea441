import { EMPTY_DAY, type DayHours, HOURS_A_DAY } from './day-hours.js'
import type { Daylight } from './daylight.js'
import { addDays, datesFrom } from './days.js'
import { wetness, type WetnessSource } from './leaf-wetness.js'

/**
 * Fewest hours of wet leaves in which ascospores infect, by the mean temperature in whole °C. MacHardy & Gadoury 1989,
 * Phytopathology 79:304-310, and Gadoury, Seem, Stensvand & Falk 1998, as West Virginia University prints it in °F: its
 * steps (34, 36, 37, 39 ... 79 °F) are whole °C.
 */
const LEAST_HOURS: ReadonlyMap<number, number> = new Map([
  [1, 41], [2, 35], [3, 30], [4, 28], [5, 21], [6, 18], [7, 15], [8, 13], [9, 12], [10, 11], [11, 9], [12, 8], [13, 8],
  [14, 7], [15, 7], [16, 6], [17, 6], [18, 6], [19, 6], [20, 6], [21, 6], [22, 6], [23, 6], [24, 6], [25, 8], [26, 11],
])

/** Fewest hours of wet leaves for an infection at this mean temperature, °C; null outside the table, 1 to 26 °C rounded. */
export function scabHours(meanC: number): number | null {
  return LEAST_HOURS.get(Math.round(meanC)) ?? null
}

/** A dry gap of so many hours ends a wet spell; a shorter one is bridged, and not counted (same source). */
export const ENDING_DRY_HOURS = 8

/** Leaves that were wet without a long break. */
export interface WetSpell {
  /** First wet hour, as 2026-06-01T05. */
  readonly from: string
  /** Last wet hour. */
  readonly to: string
  /** Wet hours that count: those from the next sunrise on when it began by night. */
  readonly wetHours: number
  /** Mean temperature of the hours that count, °C; null when none does or one is not known. */
  readonly meanC: number | null
  readonly source: WetnessSource | 'both'
  /** Whether the hours that count are enough; null when missing records leave it open. */
  readonly infects: boolean | null
}

interface Open {
  readonly hours: { readonly at: string; readonly temperatureC: number | null; readonly source: WetnessSource }[]
  dry: number
  unknown: number
}

/**
 * The wet spells of some days, in order. Hours of which nothing is known add nothing, and enough of them end a spell as dry
 * ones do; they leave it open whether it infected, unless it did by its known hours.
 * @param daylight sunrise and sunset of a date: spores fly by day, so a spell that begins by night counts from sunrise
 */
export function wetSpells(days: ReadonlyMap<string, DayHours>, first: string, last: string, daylight: (date: string) => Daylight | null): WetSpell[] {
  const spells: WetSpell[] = []
  let open: Open | null = null
  const end = (): void => {
    if (open !== null) spells.push(spellOf(open, daylight))
    open = null
  }
  for (const date of datesFrom(first, last)) {
    const day = days.get(date) ?? EMPTY_DAY
    for (let number = 0; number < HOURS_A_DAY; number++) {
      const hour = day[number] ?? null
      const known = wetness(hour)
      if (known?.isWet === true) {
        open ??= { hours: [], dry: 0, unknown: 0 }
        open.hours.push({ at: `${date}T${String(number).padStart(2, '0')}`, temperatureC: hour?.temperatureC ?? null, source: known.source })
        open.dry = 0
      } else if (open !== null) {
        if (known === null) open.unknown++
        open.dry++
        if (open.dry >= ENDING_DRY_HOURS) end()
      }
    }
  }
  end()
  return spells
}

function spellOf({ hours, unknown }: Open, daylight: (date: string) => Daylight | null): WetSpell {
  const [first, last] = [hours[0]?.at ?? '', hours[hours.length - 1]?.at ?? '']
  const from = countsFrom(first, daylight)
  const counted = hours.filter(({ at }) => at >= from)
  const temperatures = counted.flatMap(({ temperatureC }) => temperatureC ?? [])
  const whole = temperatures.length === counted.length && counted.length > 0
  const meanC = whole ? temperatures.reduce((sum, one) => sum + one, 0) / temperatures.length : null
  const needed = meanC === null ? null : scabHours(meanC)
  const infects = meanC !== null && needed !== null && counted.length >= needed
  const isOpen = !infects && (unknown > 0 || (counted.length > 0 && meanC === null))
  const sources = new Set(hours.map(({ source }) => source))
  return {
    from: first, to: last, wetHours: counted.length, meanC, source: sources.size > 1 ? 'both' : sources.has('measured') ? 'measured' : 'estimated',
    infects: isOpen ? null : infects,
  }
}

/** The first hour that counts of a spell that begins then: itself by day, else the one nearest to the next sunrise. */
function countsFrom(at: string, daylight: (date: string) => Daylight | null): string {
  const date = at.slice(0, 10)
  const hour = Number(at.slice(11, 13))
  const light = daylight(date)
  if (light === null) return at
  if (hour < Math.round(light.sunrise)) return hourOf(date, light.sunrise)
  if (hour < Math.round(light.sunset)) return at
  const morning = addDays(date, 1)
  const next = daylight(morning)
  return next === null ? at : hourOf(morning, next.sunrise)
}

function hourOf(date: string, hours: number): string {
  return `${date}T${String(Math.round(hours)).padStart(2, '0')}`
}
