/** Calendar days as ISO dates, reckoned without a time zone. */

const DAY_MS = 86_400_000

/** The date so many days later, or earlier when negative. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(date) + days * DAY_MS).toISOString().slice(0, 10)
}

/** Days from one date to another; negative when it is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS)
}

/** Every date from one to another, both included; none when the last comes before the first. */
export function datesFrom(first: string, last: string): string[] {
  return Array.from({ length: Math.max(0, daysBetween(first, last) + 1) }, (_, step) => addDays(first, step))
}

/** The latest date with this month and day that is not after the date given. 29 February counts as 1 March in other years. */
export function lastOccurrence({ month, day }: { readonly month: number; readonly day: number }, onOrBefore: string): string {
  const year = Number(onOrBefore.slice(0, 4))
  const inYear = (of: number): string => new Date(Date.UTC(of, month - 1, day)).toISOString().slice(0, 10)
  return inYear(year) <= onOrBefore ? inYear(year) : inYear(year - 1)
}
