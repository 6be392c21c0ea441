import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { CsvError, parse } from 'csv-parse'
import { type CsvFault, type DailyRecord, type Header, type HourlyRecord, readHeader, type RowReader, rowReader } from '../../season/index.js'

/** The bytes of a file, piece by piece. */
export type Bytes = AsyncIterable<Uint8Array> | Iterable<Uint8Array>

/** What a file must be read with. */
export interface ReadSetting {
  /** Minutes by which the station's clock is ahead of UTC. */
  readonly clockMinutes: number
  /** ISO date of the last day that can have been recorded. */
  readonly latest: string
}

/** A batch of records of one kind. */
export type Batch =
  | { readonly kind: 'daily'; readonly records: readonly DailyRecord[] }
  | { readonly kind: 'hourly'; readonly records: readonly HourlyRecord[] }

/** The faults of a file: the first of them, and how many there are. */
export interface CsvFaults {
  readonly first: readonly CsvFault[]
  readonly count: number
}

/** What came of reading a file. */
export interface CsvRead {
  /** Null when the first line could not be read. */
  readonly kind: Header['kind'] | null
  readonly records: number
  readonly faults: CsvFaults
}

/** So many faults are told; a file that is wrong all through is wrong in one way, mostly. */
export const MOST_FAULTS = 50
/** A line is no longer than this, characters: without an end a file with one stray quote would be read as one field. */
const LONGEST_LINE = 10_000
/** Records handed on at once: on SQLite a statement takes no more than 32,766 values. */
export const BATCH = 500

/**
 * Reads a weather file as it comes in (RFC 4180, UTF-8). Sound records go to `take`, batch by batch; every fault is
 * counted, the first fifty are kept.
 */
export async function readWeatherCsv(bytes: Bytes, setting: ReadSetting, take: (batch: Batch) => Promise<void> = () => Promise.resolve()): Promise<CsvRead> {
  const first: CsvFault[] = []
  let count = 0
  const report = (fault: CsvFault): void => {
    count++
    if (first.length < MOST_FAULTS) first.push(fault)
  }
  // Both are set within a function, which the compiler does not follow.
  let header = null as Header | null
  let rows = null as RowReader | null
  let records = 0
  let batch: (DailyRecord | HourlyRecord)[] = []
  const hand = async (kind: Header['kind']): Promise<void> => {
    const full = batch
    batch = []
    records += full.length
    // The reader of a kind gives records of that kind alone.
    await take(kind === 'daily' ? { kind, records: full as DailyRecord[] } : { kind, records: full as HourlyRecord[] })
  }
  const parser = parse({ bom: true, relax_column_count: true, max_record_size: LONGEST_LINE, record_delimiter: ['\r\n', '\n', '\r'] })
  let line = 1
  const lineOf = (fields: readonly string[]): void => {
    const here = line
    line += 1 + breaksIn(fields)
    if (rows !== null) {
      const record = rows.read(fields, here)
      if (record !== null) batch.push(record)
      return
    }
    const read = readHeader(fields)
    if ('faults' in read) {
      read.faults.forEach(report)
      throw new FirstLineFault()
    }
    header = read
    rows = rowReader(read, { ...setting, report })
  }
  try {
    await pipeline(Readable.from(bytes), parser, async (lines: AsyncIterable<readonly string[]>) => {
      for await (const fields of lines) {
        lineOf(fields)
        if (batch.length >= BATCH && header !== null) await hand(header.kind)
      }
    })
  } catch (fault) {
    if (fault instanceof CsvError) {
      report({ line, field: null, message: `From here on the file cannot be read as CSV: ${fault.message} Expected fields with commas between, and quotes only around whole fields.` })
    } else if (!(fault instanceof FirstLineFault)) throw fault
  }
  if (header === null) {
    if (count === 0) report({ line: 1, field: null, message: 'The file is empty. Expected a first line with the names of the columns.' })
    return { kind: null, records, faults: { first, count } }
  }
  if (batch.length > 0) await hand(header.kind)
  return { kind: header.kind, records, faults: { first, count } }
}

/** Ends the reading at once: without the names of its columns nothing of a file can be understood. */
class FirstLineFault extends Error {}

/** How many ends of line stand within quoted fields. */
function breaksIn(fields: readonly string[]): number {
  let breaks = 0
  for (const field of fields) {
    for (let at = field.indexOf('\n'); at >= 0; at = field.indexOf('\n', at + 1)) breaks++
  }
  return breaks
}
