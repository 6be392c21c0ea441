import type { CsvFault, Header, PlacedColumn } from './csv-columns.js'
import { hourOfTime, isDate } from './csv-times.js'
import type { DailyRecord, HourlyRecord } from './records.js'

/** Takes the lines after the first one by one. */
export interface RowReader {
  /** The record of a line; null when the line is faulty, or holds no value at all. */
  read(fields: readonly string[], line: number): DailyRecord | HourlyRecord | null
}

/** What a reader must know besides the file. */
export interface RowSetting {
  /** Minutes by which the station's clock is ahead of UTC. */
  readonly clockMinutes: number
  /** ISO date of the last day that can have been recorded. */
  readonly latest: string
  readonly report: (fault: CsvFault) => void
}

/** Reads the lines of a file with this header. Every fault of a line is reported, with its place and what was expected. */
export function rowReader(header: Header, { clockMinutes, latest, report }: RowSetting): RowReader {
  const seen = new Map<string, number>()
  const whenField = { number: header.when + 1, name: header.kind === 'daily' ? 'date' : 'time' }
  const when = (fields: readonly string[], line: number): string | null => {
    const text = fields[header.when]?.trim() ?? ''
    const key = header.kind === 'daily' ? (isDate(text) ? text : null) : hourOfTime(text, clockMinutes)
    const refuse = (message: string): null => {
      report({ line, field: whenField, message })
      return null
    }
    if (key === null) {
      return refuse(header.kind === 'daily' ? `"${text}" is no date. Expected one such as 2026-06-01.`
        : `"${text}" is not the beginning of an hour. Expected one such as 2026-06-01T05:00 by the station's clock, or with an offset, 2026-06-01T05:00+02:00.`)
    }
    if (key.slice(0, 10) > latest) return refuse(`"${text}" lies in the future. Expected ${latest} at the latest.`)
    const before = seen.get(key)
    if (before !== undefined) return refuse(`"${text}" stands on line ${before} already. Expected each ${header.kind === 'daily' ? 'day' : 'hour'} once.`)
    seen.set(key, line)
    return key
  }
  return {
    read(fields, line) {
      if (fields.length !== header.width) {
        // An empty line at the end is no fault.
        if (fields.length === 1 && fields[0] === '') return null
        report({ line, field: null, message: `The line has ${fields.length} fields. Expected ${header.width}, as in the first line.` })
        return null
      }
      const key = when(fields, line)
      const values = header.kind === 'daily' ? { minC: null, maxC: null, rainMm: null } : { temperatureC: null, humidityPct: null, rainMm: null, wetMinutes: null }
      const found = valuesOf<string>(header.columns, fields, line, values, report)
      if (key === null || found === null) return null
      if (header.kind === 'hourly') return found.some ? { hour: key, ...found.values } as HourlyRecord : null
      const daily = { date: key, ...found.values } as DailyRecord
      if (daily.minC !== null && daily.maxC !== null && daily.minC > daily.maxC) {
        report({ line, field: null, message: 'The lowest temperature is above the highest. Expected the lowest in temperature_min and the highest in temperature_max.' })
        return null
      }
      return found.some ? daily : null
    },
  }
}

const NUMBER = /^-?\d+(?:\.\d+)?$/

/** The values of a line, or null after reporting every one that does not fit. */
function valuesOf<Measure extends string>(
  columns: readonly PlacedColumn<Measure>[], fields: readonly string[], line: number, empty: Record<Measure, null>, report: (fault: CsvFault) => void,
): { values: Record<Measure, number | null>; some: boolean } | null {
  const values: Record<Measure, number | null> = empty
  let some = false
  let isSound = true
  for (const { measure, name, at, least, most, unit, toKept } of columns) {
    const text = fields[at] ?? ''
    if (text === '') continue
    const trimmed = text.trim()
    if (trimmed === '') continue
    const value = NUMBER.test(trimmed) ? Number(trimmed) : NaN
    if (value >= least && value <= most) {
      values[measure] = toKept(value)
      some = true
    } else {
      report({ line, field: { number: at + 1, name }, message: `"${trimmed}" does not fit. Expected a number from ${least} to ${most} (${unit}) with a decimal point, or nothing where it is missing.` })
      isSound = false
    }
  }
  return isSound ? { values, some } : null
}
