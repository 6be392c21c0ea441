import { type StationState, WATCHED_DAYS } from '../desk/index.js'
import type { CsvFault } from '../season/index.js'

/** One fault of a weather file: place first, as compilers write it. */
export function faultLine(file: string, { line, field, message }: CsvFault): string {
  return `${file}:${line}: ${field === null ? '' : `field ${field.number}, ${field.name}: `}${message}`
}

/** So many missing days are named in a line; the rest is counted. */
const MOST_NAMED = 5

/** What there is to say of a station, in a few lines. */
export function stationLines({ station, last, missing, reads }: StationState): string[] {
  const gaps = missing.hours.reduce((sum, { hours }) => sum + hours.length, 0)
  return [
    `${station.id}  ${station.name}, ${station.district}`,
    `  last day ${last.day ?? 'none'}, last hour ${last.hour ?? 'none'}`,
    `  missing of the last ${WATCHED_DAYS} days: temperature on ${named(missing.temperatureDays)}; rain on ${named(missing.rainDays)}; all hours of ${named(missing.hourlessDays)}; ${gaps} single ${gaps === 1 ? 'hour' : 'hours'}`,
    ...reads.map(({ origin, begun_at, outcome, kept, faults, why }) => (
      `  ${begun_at.slice(0, 16)}Z ${origin}: ${outcome ?? 'going on, or broken off'}, ${kept} records, ${faults} faults${why === null ? '' : `; ${why}`}`
    )),
  ]
}

function named(days: readonly string[]): string {
  if (days.length === 0) return 'no day'
  const more = days.length - MOST_NAMED
  return `${days.slice(0, MOST_NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`
}
