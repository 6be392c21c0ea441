import { addDays } from '../../season/index.js'
import {
  beginWeatherRead, type Db, endWeatherRead, keepWeatherDays, keepWeatherHours, type WeatherStationRow,
} from '../../store/index.js'
import type { Room } from '../room.js'
import { type Batch, type Bytes, type CsvFaults, readWeatherCsv } from './read-weather-csv.js'

/** As much of the room as weather needs. */
export type WeatherRoom = Pick<Room, 'db' | 'now'>

/** A file that can be read from its beginning as often as asked. */
export interface WeatherFile {
  /** Its name, as it is noted and shown; nothing secret. */
  readonly origin: string
  open(): Bytes
}

/** What came of it. */
export interface KeptWeather {
  readonly kind: 'daily' | 'hourly' | null
  /** Records kept; 0 when the file was refused. */
  readonly kept: number
  readonly faults: CsvFaults
  readonly isRefused: boolean
}

/**
 * Keeps what a file says of a station. It is read twice: once to see whether it is sound, once to keep it batch by batch,
 * so that no transaction holds up others for long. A file with faults is refused whole, unless they are to be skipped; one
 * whose first line is faulty always. Keeping a file again changes nothing.
 * @throws what the source or the store throws; the reading is then noted as failed
 */
export async function keepWeather(room: WeatherRoom, station: WeatherStationRow, file: WeatherFile, skipFaulty = false): Promise<KeptWeather> {
  const at = room.now()
  const readId = await beginWeatherRead(room.db, station.id, file.origin, at.toISOString())
  try {
    const kept = await readAndKeep(room.db, station, file, { readId, at, skipFaulty })
    await endWeatherRead(room.db, readId, {
      outcome: kept.isRefused ? 'refused' : 'kept', kept: kept.kept, faults: kept.faults.count, ended_at: room.now().toISOString(),
      why: kept.faults.first[0] === undefined ? null : `line ${kept.faults.first[0].line}: ${kept.faults.first[0].message}`,
    })
    return kept
  } catch (fault) {
    await endWeatherRead(room.db, readId, {
      outcome: 'failed', kept: 0, faults: 0, ended_at: room.now().toISOString(), why: fault instanceof Error ? fault.message : String(fault),
    })
    throw fault
  }
}

async function readAndKeep(
  db: WeatherRoom['db'], station: WeatherStationRow, file: WeatherFile, { readId, at, skipFaulty }: { readId: number; at: Date; skipFaulty: boolean },
): Promise<KeptWeather> {
  // A station east of Greenwich may be a day ahead.
  const setting = { clockMinutes: station.clock_minutes, latest: addDays(at.toISOString().slice(0, 10), 1) }
  const seen = await readWeatherCsv(file.open(), setting)
  if (seen.kind === null || (seen.faults.count > 0 && !skipFaulty)) return { kind: seen.kind, kept: 0, faults: seen.faults, isRefused: true }
  const { kind, records, faults } = await readWeatherCsv(file.open(), setting, (batch) => (
    db.transaction().execute((transaction) => keepBatch(transaction, station.id, readId, batch))
  ))
  return { kind, kept: records, faults, isRefused: false }
}

/** Keeps records of a station as part of one reading. */
export async function keepBatch(db: Db, stationId: number, readId: number, batch: Batch): Promise<void> {
  if (batch.kind === 'daily') {
    await keepWeatherDays(db, stationId, readId, batch.records.map(({ date, minC, maxC, rainMm }) => ({ day: date, min_c: minC, max_c: maxC, rain_mm: rainMm })))
  } else {
    await keepWeatherHours(db, stationId, readId, batch.records.map(({ hour, temperatureC, humidityPct, rainMm, wetMinutes }) => ({
      hour, temperature_c: temperatureC, humidity_pct: humidityPct, rain_mm: rainMm, wet_minutes: wetMinutes,
    })))
  }
}
