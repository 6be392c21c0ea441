import { z } from 'zod'

const Day = z.iso.date()

/** Rain of some last days against what a garden needs in them. */
const RainAgainstNeed = z.object({
  days: z.number().int(),
  /** mm, at least: days without a measure add nothing. */
  sumMm: z.number(), needMm: z.number(), missing: z.number().int(),
})

/** One sum of degree days over the year so far, and what the guide expects along it. */
export const HeatCurve = z.object({
  /** How it is reckoned: 'above 10 °C from 1 January, average of the day'. */
  how: z.string(),
  unit: z.enum(['C', 'F']),
  sum: z.number(),
  points: z.array(z.object({ day: Day, sum: z.number() })),
  missing: z.number().int(),
  /** Where along the curve problems are seen; no end where what has come stays. */
  events: z.array(z.object({ problem: z.string(), name: z.string(), least: z.number(), most: z.number().nullable() })),
}).meta({ id: 'HeatCurve' })

/** A spell of wet leaves as the table of apple scab reads it; null where records are missing. */
const ScabSpell = z.object({ from: z.string(), to: z.string(), hours: z.number(), meanC: z.number().nullable(), infects: z.boolean().nullable() })

/** What one station's records say of a district as of a day. Missing days and hours are named, never filled in. */
export const StationWeather = z.object({
  station: z.string(), name: z.string(),
  /** The last day that counts, and the last of which anything is recorded. */
  lastDay: Day, lastRecorded: Day.nullable(),
  rain: z.object({ week: RainAgainstNeed, month: RainAgainstNeed, byDay: z.array(z.object({ day: Day, mm: z.number().nullable() })) }),
  heat: z.array(HeatCurve),
  /** Second days of two days that met the criterion, and days left open by missing records; of six weeks. */
  lateBlight: z.object({ hutton: z.array(Day), smith: z.array(Day), open: z.array(Day) }),
  /** Daily severity values for leaf blights of tomato, of two weeks. */
  tomato: z.object({ sum: z.number(), days: z.array(z.object({ day: Day, value: z.number().int() })), open: z.array(Day) }),
  scab: z.array(ScabSpell),
  /** What is missing in the last six weeks. */
  missing: z.object({
    temperatureDays: z.array(Day), rainDays: z.array(Day), hourlessDays: z.array(Day),
    partDays: z.array(z.object({ day: Day, hours: z.number().int() })),
  }),
}).meta({ id: 'StationWeather' })

/** The weather of a district; no station, no weather. */
export const DistrictWeather = z.object({
  district: z.string(), districtName: z.string(), on: Day, station: StationWeather.nullable(),
}).meta({ id: 'DistrictWeather' })

export type HeatCurve = z.infer<typeof HeatCurve>
export type StationWeather = z.infer<typeof StationWeather>
export type DistrictWeather = z.infer<typeof DistrictWeather>
