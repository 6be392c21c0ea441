/** Dates and times of weather files. */

const MONTH_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Whether this is a day of the calendar, written 2026-06-01. Checked by hand: files hold it millions of times. */
export function isDate(text: string): boolean {
  if (text.length !== 10 || text[4] !== '-' || text[7] !== '-') return false
  const year = digits(text, 0, 4)
  const month = digits(text, 5, 7)
  const day = digits(text, 8, 10)
  if (year < 1700 || month < 1 || month > 12 || day < 1 || day > (MONTH_DAYS[month - 1] ?? 0)) return false
  return month !== 2 || day < 29 || new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1
}

const WITH_OFFSET = /^(\d{4}-\d{2}-\d{2})[T ]([01]\d|2[0-3]):([0-5]\d)(?::00)?(Z|[+-](?:0\d|1[0-4]):[0-5]\d)$/

/**
 * The hour that begins at this time by the station's clock, as 2026-06-01T05, or null when it is no such time or no full
 * hour. Without Z or an offset such as +02:00 it is taken as the station's own clock.
 * @param clockMinutes minutes by which that clock is ahead of UTC
 */
export function hourOfTime(text: string, clockMinutes: number): string | null {
  const isPlain = text.length === 16 || (text.length === 19 && text.endsWith(':00'))
  if (isPlain && text[13] === ':') {
    const between = text[10]
    const hour = digits(text, 11, 13)
    if ((between !== 'T' && between !== ' ') || hour < 0 || hour > 23 || text[14] !== '0' || text[15] !== '0') return null
    const date = text.slice(0, 10)
    return isDate(date) ? `${date}T${text.slice(11, 13)}` : null
  }
  const parts = WITH_OFFSET.exec(text)
  if (parts === null || !isDate(parts[1] ?? '')) return null
  const at = Date.parse(`${parts[1] ?? ''}T${parts[2] ?? ''}:${parts[3] ?? ''}:00${parts[4] ?? ''}`) + clockMinutes * 60_000
  return at % 3_600_000 === 0 ? new Date(at).toISOString().slice(0, 13) : null
}

/** The number written in these places, or -1 when something else stands there. */
function digits(text: string, from: number, to: number): number {
  let number = 0
  for (let at = from; at < to; at++) {
    const digit = text.charCodeAt(at) - 48
    if (!(digit >= 0 && digit <= 9)) return -1
    number = number * 10 + digit
  }
  return number
}
