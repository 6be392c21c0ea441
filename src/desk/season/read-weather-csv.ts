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
  let header: Header | null = null
  let rows: RowReader | null = null
  let records = 0
  let batch: (DailyRecord | HourlyRecord)[] = []
  const hand = async (kind: Header['kind']): Promise<void> => {
    const full = batch
    batch = []
    records += full.length
    // The reader of a kind gives records of that kind alone.
    await take(kind === 'daily' ? { kind, records: full as DailyRecord[] } : { kind, records: full as HourlyRecord[] })
  }
  const parser = parse({ bom: true, relax_column_count: true, max_record_size: LONGEST_LINE })
  let line = 1
  try {
    for await (const fields of feed(bytes, parser)) {
      const here = line
      line += 1 + (fields.some((field) => field.includes('\n')) ? fields.join('').split('\n').length - 1 : 0)
      if (rows === null) {
        const read = readHeader(fields)
        if ('faults' in read) {
          read.faults.forEach(report)
          return { kind: null, records, faults: { first, count } }
        }
        header = read
        rows = rowReader(read, { ...setting, report })
        continue
      }
      const record = rows.read(fields, here)
      if (record === null) continue
      batch.push(record)
      if (batch.length >= BATCH && header !== null) await hand(header.kind)
    }
  } catch (fault) {
    if (!(fault instanceof CsvError)) throw fault
    report({ line, field: null, message: `From here on the file cannot be read as CSV: ${fault.message} Expected fields with commas between, and quotes only around whole fields.` })
  }
  if (header === null) {
    if (count === 0) report({ line: 1, field: null, message: 'The file is empty. Expected a first line with the names of the columns.' })
    return { kind: null, records, faults: { first, count } }
  }
  if (batch.length > 0) await hand(header.kind)
  return { kind: header.kind, records, faults: { first, count } }
}

/** The fields of each line. A fault of the source itself ends it too. */
async function* feed(bytes: Bytes, parser: ReturnType<typeof parse>): AsyncGenerator<readonly string[]> {
  const writing = (async () => {
    for await (const piece of bytes) {
      if (!parser.write(piece)) await new Promise<void>((resolve) => { parser.once('drain', resolve).once('close', resolve) })
      if (parser.destroyed) return
    }
    parser.end()
  })().catch((fault: unknown) => { parser.destroy(fault instanceof Error ? fault : new Error(String(fault))) })
  for await (const fields of parser) yield fields as readonly string[]
  await writing
}
