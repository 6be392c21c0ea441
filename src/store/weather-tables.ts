import type { Generated } from 'kysely'

/** A weather station. */
export interface WeatherStationTable {
  id: Generated<number>
  /** What people call it in commands and addresses, of small letters, digits and hyphens. */
  name: string
  /** What is shown of it. */
  title: string
  /** Id of the district of region.yaml that it stands for. */
  district: string
  /** Degrees, north and east positive. */
  latitude: number
  longitude: number
  /** Minutes by which its clock is ahead of UTC, all year round. */
  clock_minutes: number
  /** 1 when made up for the demonstration. */
  invented: Generated<number>
}

/** One reading of a weather file, or of an address, and what came of it. */
export interface WeatherReadTable {
  id: Generated<number>
  station_id: number
  /** The file's name, or the address without what may be secret in it. */
  origin: string
  begun_at: string
  /** Null while it goes on, or when it broke off. */
  ended_at: string | null
  /** 'kept', 'refused' or 'failed'; null until it has ended. */
  outcome: string | null
  /** How many records it brought. */
  kept: number
  /** How many faults it had. */
  faults: number
  /** What was wrong, in words for people. */
  why: string | null
}

/** A day by the station's clock. Null where nothing was measured. */
export interface WeatherDayTable {
  station_id: number
  /** ISO date. */
  day: string
  min_c: number | null
  max_c: number | null
  rain_mm: number | null
  /** The reading that brought it last. */
  read_id: number
}

/** An hour by the station's clock. Null where nothing was measured. */
export interface WeatherHourTable {
  station_id: number
  /** When it begins, as 2026-06-01T05. */
  hour: string
  temperature_c: number | null
  humidity_pct: number | null
  rain_mm: number | null
  wet_minutes: number | null
  read_id: number
}
