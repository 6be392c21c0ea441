/** What a weather station records, in the units that everything here reckons in. Null where a value is missing. */

/** Where records come from. */
export interface Station {
  readonly id: string
  readonly name: string
  /** The district of region.yaml that it stands for. */
  readonly district: string
  /** Degrees, north positive, -90 to 90. */
  readonly latitude: number
  /** Degrees, east positive, -180 to 180. */
  readonly longitude: number
  /** Minutes by which the station's clock is ahead of UTC, all year round: no summer time. Its days begin at its own midnight. */
  readonly clockMinutes: number
}

/** One day by the station's clock. */
export interface DailyRecord {
  /** ISO date. */
  readonly date: string
  /** °C. */
  readonly minC: number | null
  /** °C. */
  readonly maxC: number | null
  /** mm. */
  readonly rainMm: number | null
}

/** One hour by the station's clock. */
export interface HourlyRecord {
  /** When the hour begins, as 2026-06-01T05. */
  readonly hour: string
  /** °C. */
  readonly temperatureC: number | null
  /** Relative humidity, %, 0 to 100. */
  readonly humidityPct: number | null
  /** mm. */
  readonly rainMm: number | null
  /** Minutes of this hour in which a sensor found leaves wet, 0 to 60. */
  readonly wetMinutes: number | null
}
