/**
 * Weeks as ISO 8601 has them: they begin on a Monday, and week 1 is the one with the year's first Thursday. Written
 * '2026-W21', so that the order of the text is the order in time.
 */
export type IsoWeek = `${number}-W${number}`

const DAY_MS = 86_400_000

/** The week of a day (ISO date). */
export function isoWeekOf(day: string): IsoWeek {
  const monday = mondayOf(Date.parse(day))
  const thursday = new Date(monday + 3 * DAY_MS)
  const year = thursday.getUTCFullYear()
  return named(year, Math.floor((thursday.getTime() - Date.UTC(year, 0, 1)) / (7 * DAY_MS)) + 1)
}

/** Year and number of a week. Throws for text that names no week. */
export function weekParts(week: string): { readonly year: number; readonly number: number } {
  const [, year, number] = /^(\d{4})-W(\d{2})$/.exec(week) ?? []
  if (year === undefined || number === undefined) throw new Error(`"${week}" names no week. Expected one like 2026-W21.`)
  return { year: Number(year), number: Number(number) }
}

/** Monday of a week, as ISO date. */
export function mondayOfWeek(week: string): string {
  const { year, number } = weekParts(week)
  // The fourth of January is always in week 1.
  return isoDate(mondayOf(Date.UTC(year, 0, 4)) + (number - 1) * 7 * DAY_MS)
}

/** The week so many weeks later, or earlier for a negative count. */
export function weekAfter(week: string, count: number): IsoWeek {
  return isoWeekOf(isoDate(Date.parse(mondayOfWeek(week)) + count * 7 * DAY_MS))
}

/** Every week from one to another, both included; none when the second is before the first. */
export function weeksBetween(first: string, last: string): IsoWeek[] {
  const weeks: IsoWeek[] = []
  for (let week = weekAfter(first, 0); week <= last; week = weekAfter(week, 1)) weeks.push(week)
  return weeks
}

/** The same week so many years before. A week 53 is held against the last week of years that have none. */
export function sameWeekBefore(week: string, years: number): IsoWeek {
  const { year, number } = weekParts(week)
  const last = weekParts(isoWeekOf(`${year - years}-12-28`)).number
  return named(year - years, Math.min(number, last))
}

function mondayOf(time: number): number {
  return time - ((new Date(time).getUTCDay() + 6) % 7) * DAY_MS
}

function named(year: number, number: number): IsoWeek {
  return `${String(year).padStart(4, '0')}-W${String(number).padStart(2, '0')}` as IsoWeek
}

function isoDate(time: number): string {
  return new Date(time).toISOString().slice(0, 10)
}
