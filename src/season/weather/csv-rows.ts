import type { CsvFault, DailyMeasure, Header, HourlyMeasure, PlacedColumn } from './csv-columns.js'
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
export function rowReader(header: Header, setting: RowSetting): RowReader {
  const { report } = setting
  const when = whenReader(header, setting)
  return {
    read(fields, line) {
      if (fields.length !== header.width) {
        // An empty line at the end is no fault.
        if (fields.length === 1 && fields[0] === '') return null
        report({ line, field: null, message: `The line has ${fields.length} fields. Expected ${header.width}, as in the first line.` })
        return null
      }
      const key = when(fields[header.when] ?? '', line)
      if (header.kind === 'hourly') {
        const hour = { hour: key ?? '', temperatureC: null, humidityPct: null, rainMm: null, wetMinutes: null }
        return fill<HourlyMeasure>(hour, header.columns, fields, line, report) && key !== null ? hour : null
      }
      const day: Day = { date: key ?? '', minC: null, maxC: null, rainMm: null }
      if (!fill<DailyMeasure>(day, header.columns, fields, line, report) || key === null) return null
      if (day.minC !== null && day.maxC !== null && day.minC > day.maxC) {
        report({ line, field: null, message: 'The lowest temperature is above the highest. Expected the lowest in temperature_min and the highest in temperature_max.' })
        return null
      }
      return day
    },
  }
}

type Day = { -readonly [Part in keyof DailyRecord]: DailyRecord[Part] }

/** Reads dates or times, and sees that each stands once. */
function whenReader({ kind, when }: Header, { clockMinutes, latest, report }: RowSetting): (text: string, line: number) => string | null {
  const field = { number: when + 1, name: kind === 'daily' ? 'date' : 'time' }
  const latestKey = kind === 'daily' ? latest : `${latest}T23`
  const once = standsOnce()
  return (written, line) => {
    const text = written.trim()
    const key = kind === 'daily' ? (isDate(text) ? text : null) : hourOfTime(text, clockMinutes)
    const refuse = (message: string): null => {
      report({ line, field, message })
      return null
    }
    if (key === null) {
      return refuse(kind === 'daily' ? `"${text}" is no date. Expected one such as 2026-06-01.`
        : `"${text}" is not the beginning of an hour. Expected one such as 2026-06-01T05:00 by the station's clock, or with an offset, 2026-06-01T05:00+02:00.`)
    }
    if (key > latestKey) return refuse(`"${text}" lies in the future. Expected ${latest} at the latest.`)
    const before = once(key, line)
    return before === null ? key : refuse(`"${text}" stands on line ${before} already. Expected each ${kind === 'daily' ? 'day' : 'hour'} once.`)
  }
}

/**
 * Gives the line on which a key stood before, or null. Files are in order of time, mostly: as long as one is, comparing
 * with the last key is enough, and millions of keys need no index.
 */
function standsOnce(): (key: string, line: number) => number | null {
  const keys: string[] = []
  const lines: number[] = []
  let index: Map<string, number> | null = null
  return (key, line) => {
    const last = keys[keys.length - 1]
    if (index === null && last !== undefined && key <= last) index = new Map(keys.map((one, at) => [one, lines[at] ?? 0]))
    const before = index?.get(key)
    if (before !== undefined) return before
    if (index === null) {
      keys.push(key)
      lines.push(line)
    } else index.set(key, line)
    return null
  }
}

const NUMBER = /^-?\d+(?:\.\d+)?$/

/** Writes the values of a line into a record after reporting every one that does not fit. True when it is sound and has any. */
function fill<Measure extends string>(
  record: Record<Measure, number | null>, columns: readonly PlacedColumn<Measure>[], fields: readonly string[], line: number, report: (fault: CsvFault) => void,
): boolean {
  let some = false
  let isSound = true
  for (const { measure, name, at, least, most, unit, toKept } of columns) {
    const text = (fields[at] ?? '').trim()
    if (text === '') continue
    const value = NUMBER.test(text) ? Number(text) : NaN
    if (value >= least && value <= most) {
      record[measure] = toKept(value)
      some = true
    } else {
      report({ line, field: { number: at + 1, name }, message: `"${text}" does not fit. Expected a number from ${least} to ${most} (${unit}) with a decimal point, or nothing where it is missing.` })
      isSound = false
    }
  }
  return isSound && some
}
