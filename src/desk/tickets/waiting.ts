const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR

/** How long a ticket has waited, in words: 'Waiting 3 hours', and whether that is longer than it should be. */
export function waitingWords(openedAt: string, now: Date, aimHours: number): string {
  const waited = Math.max(0, now.getTime() - Date.parse(openedAt))
  const late = waited > aimHours * HOUR ? `, longer than the ${aimHours} hours aimed at` : ''
  return `Waiting ${lengthWords(waited)}${late}`
}

/** How long ago something was, in words: '3 hours'. */
export function spanWords(at: string, now: Date): string {
  return lengthWords(Math.max(0, now.getTime() - Date.parse(at)))
}

function lengthWords(ms: number): string {
  if (ms >= 2 * DAY) return counted(Math.floor(ms / DAY), 'day')
  if (ms >= HOUR) return counted(Math.floor(ms / HOUR), 'hour')
  return counted(Math.floor(ms / MINUTE), 'minute')
}

function counted(count: number, unit: string): string {
  return `${count} ${unit}${count === 1 ? '' : 's'}`
}
