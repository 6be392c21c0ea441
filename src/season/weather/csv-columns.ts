import { closestNames } from '../../guide/index.js'
import { celsiusOf, MM_PER_INCH } from './units.js'

/** What can be wrong with a weather file, and where. */
export interface CsvFault {
  /** From 1. */
  readonly line: number
  /** Which field of the line, from 1, and its name; null when the whole line is meant. */
  readonly field: { readonly number: number; readonly name: string } | null
  /** What is there, what was expected, and what to do. */
  readonly message: string
}

export type DailyMeasure = 'minC' | 'maxC' | 'rainMm'
export type HourlyMeasure = 'temperatureC' | 'humidityPct' | 'rainMm' | 'wetMinutes'

/** One column: what it measures, in which unit, and between which numbers of that unit it can be true. */
export interface Column<Measure> {
  readonly measure: Measure
  readonly unit: string
  readonly least: number
  readonly most: number
  /** Brings a number of the file into the unit that we keep. */
  toKept(value: number): number
}

const same = (value: number): number => value
const celsius = { unit: '°C', least: -60, most: 60, toKept: same }
const fahrenheit = { unit: '°F', least: -76, most: 140, toKept: celsiusOf }
const inches = (value: number): number => value * MM_PER_INCH

/** Columns of a file with one line a day, beside `date`. */
export const dailyColumns: Readonly<Record<string, Column<DailyMeasure>>> = {
  temperature_min_c: { measure: 'minC', ...celsius },
  temperature_min_f: { measure: 'minC', ...fahrenheit },
  temperature_max_c: { measure: 'maxC', ...celsius },
  temperature_max_f: { measure: 'maxC', ...fahrenheit },
  rain_mm: { measure: 'rainMm', unit: 'mm', least: 0, most: 2000, toKept: same },
  rain_in: { measure: 'rainMm', unit: 'inches', least: 0, most: 79, toKept: inches },
}

/** Columns of a file with one line an hour, beside `time`. */
export const hourlyColumns: Readonly<Record<string, Column<HourlyMeasure>>> = {
  temperature_c: { measure: 'temperatureC', ...celsius },
  temperature_f: { measure: 'temperatureC', ...fahrenheit },
  humidity_pct: { measure: 'humidityPct', unit: '%', least: 0, most: 100, toKept: same },
  rain_mm: { measure: 'rainMm', unit: 'mm', least: 0, most: 500, toKept: same },
  rain_in: { measure: 'rainMm', unit: 'inches', least: 0, most: 20, toKept: inches },
  wet_minutes: { measure: 'wetMinutes', unit: 'minutes of the hour', least: 0, most: 60, toKept: same },
  wet_hours: { measure: 'wetMinutes', unit: 'parts of the hour', least: 0, most: 1, toKept: (hours) => hours * 60 },
}

/** A column with its place in the line. */
export interface PlacedColumn<Measure> extends Column<Measure> {
  readonly name: string
  /** From 0. */
  readonly at: number
}

/** What the first line says that the others hold. */
export type Header =
  | { readonly kind: 'daily'; readonly when: number; readonly width: number; readonly columns: readonly PlacedColumn<DailyMeasure>[] }
  | { readonly kind: 'hourly'; readonly when: number; readonly width: number; readonly columns: readonly PlacedColumn<HourlyMeasure>[] }

/** Reads the first line. Names are taken whatever their capitals and the blanks around them. */
export function readHeader(fields: readonly string[]): Header | { readonly faults: readonly CsvFault[] } {
  const names = fields.map((field) => field.trim().toLowerCase())
  const isDaily = names.includes('date')
  if (isDaily === names.includes('time')) {
    const found = isDaily ? 'has both "date" and "time"' : 'has neither "date" nor "time"'
    return { faults: [{ line: 1, field: null, message: `The first line ${found}. Expected the names of the columns: "date" with one line a day, or "time" with one line an hour.` }] }
  }
  return isDaily ? placed('daily', 'date', names, dailyColumns) : placed('hourly', 'time', names, hourlyColumns)
}

function placed<Kind extends 'daily' | 'hourly', Measure extends string>(kind: Kind, whenName: string, names: readonly string[], known: Readonly<Record<string, Column<Measure>>>):
  { kind: Kind; when: number; width: number; columns: PlacedColumn<Measure>[] } | { faults: CsvFault[] } {
  const faults: CsvFault[] = []
  const columns: PlacedColumn<Measure>[] = []
  const all = [whenName, ...Object.keys(known)]
  names.forEach((name, at) => {
    const fault = (message: string): void => { faults.push({ line: 1, field: { number: at + 1, name }, message }) }
    const column = Object.hasOwn(known, name) ? known[name] : undefined
    if (name === whenName) {
      if (names.indexOf(name) !== at) fault(`"${name}" stands twice. Expected it once.`)
    } else if (column === undefined) {
      const [nearest] = closestNames(name, all)
      fault(`"${name}" is no column of a file with "${whenName}". ${nearest === undefined ? '' : `Did you mean "${nearest}"? `}Expected one of: ${all.join(', ')}. Take other columns out.`)
    } else {
      const other = columns.find(({ measure }) => measure === column.measure)
      if (other === undefined) columns.push({ ...column, name, at })
      else fault(`"${name}" says the same as "${other.name}". Expected one of them.`)
    }
  })
  if (faults.length === 0 && columns.length === 0) faults.push({ line: 1, field: null, message: `There is nothing but "${whenName}". Expected at least one of: ${Object.keys(known).join(', ')}.` })
  return faults.length > 0 ? { faults } : { kind, when: names.indexOf(whenName), width: names.length, columns }
}
