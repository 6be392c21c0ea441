/** A stored moment or day as people write it ('25 November 2026'); what does not read as a date is shown as it is. */
export function dayInWords(stored: string, language = 'en'): string {
  const moment = new Date(stored)
  if (Number.isNaN(moment.getTime())) return stored
  // A bare day has no time zone: reading it in the local one could show the day before.
  const bareDay = /^\d{4}-\d{2}-\d{2}$/.test(stored)
  return new Intl.DateTimeFormat(localeOf(language), {
    day: 'numeric', month: 'long', year: 'numeric', ...(bareDay ? { timeZone: 'UTC' } : {}),
  }).format(moment)
}

/** English dates are written with the day first. */
function localeOf(language: string): string {
  return language === 'en' ? 'en-GB' : language
}

/** The same with the time of day. */
export function momentInWords(stored: string): string {
  const moment = new Date(stored)
  if (Number.isNaN(moment.getTime())) return stored
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' }).format(moment)
}

/** A month by its number, 1 to 12: 'November'. */
export function monthInWords(month: number, language = 'en'): string {
  return new Intl.DateTimeFormat(localeOf(language), { month: 'long', timeZone: 'UTC' }).format(new Date(Date.UTC(2000, month - 1, 1)))
}

/** Things named one after the other: 'April to June and September'. */
export function inOneLine(parts: readonly string[], language = 'en'): string {
  return new Intl.ListFormat(localeOf(language), { type: 'conjunction' }).format(parts)
}

/** The week that begins on a Monday (ISO date), from day to day as the language writes it: '18 – 24 May 2026'. */
export function weekInWords(monday: string, language = 'en'): string {
  const first = new Date(`${monday}T00:00:00Z`)
  const last = new Date(first)
  last.setUTCDate(last.getUTCDate() + 6)
  return new Intl.DateTimeFormat(language === 'en' ? 'en-GB' : language, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }).formatRange(first, last)
}
