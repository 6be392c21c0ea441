import { z } from 'zod'

/** A week as ISO 8601 has it, such as 2026-W21. */
export const Week = z.string().regex(/^\d{4}-W(0[1-9]|[1-4]\d|5[0-3])$/, 'a week like 2026-W21').meta({ id: 'Week' })

const Name = z.string().trim().min(1).max(80)
const orNothing = <Schema extends z.ZodType>(schema: Schema) => z.preprocess((sent) => (sent === '' ? undefined : sent), schema.optional())

/** One reason why the season moves a problem: a code with values for every language, and the words in English. */
export const MoveReasonLine = z.object({
  code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number()])), words: z.string(),
}).meta({ id: 'MoveReasonLine' })

/** That a problem is more or less likely here and now, and why; kept with the case when it was opened. */
export const MovedLine = z.object({
  direction: z.enum(['more', 'less']),
  /** What the prior was multiplied by. */
  factor: z.number().positive(),
  reasons: z.array(MoveReasonLine),
  /** The whole line: 'more likely here now: 3 reports in Holt Fen this week'. */
  words: z.string(),
}).meta({ id: 'MovedLine' })

export const PresenceState = z.enum(['not found', 'found nearby', 'present', 'widespread']).meta({ id: 'PresenceState' })

/** What was said of a watch problem in a district; a later word stands over an earlier one and alters none. */
export const PresenceWord = z.object({
  state: PresenceState,
  /** ISO date from which on it holds. */
  on: z.string(),
  by: z.string(), why: z.string(),
  /** When it was written down. */
  at: z.string(),
}).meta({ id: 'PresenceWord' })

export const PresenceRow = z.object({
  problem: z.string(), name: z.string(), district: z.string(), districtName: z.string(),
  /** How it stands today; null when nothing was said that bears on it. */
  state: PresenceState.nullable(),
  /** Name of the neighbouring district where it was found, when that is why it counts as found nearby. */
  besideName: z.string().nullable(),
  /** Every word ever, the last one first. */
  history: z.array(PresenceWord),
}).meta({ id: 'PresenceRow' })

/** Every watch problem in every district. */
export const PresenceTable = z.object({ rows: z.array(PresenceRow) }).meta({ id: 'PresenceTable' })

export const SetPresence = z.strictObject({
  problem: Name, district: Name, state: PresenceState,
  /** The reason, for colleagues. */
  why: z.string().trim().min(1).max(1000),
  /** From which day on it holds; today when left out. */
  on: z.iso.date().optional(),
}).meta({ id: 'SetPresence' })

/** Which weeks to look at. Everything that is given must fit. */
export const WeeksSearch = z.object({
  problem: orNothing(Name), host: orNothing(Name), district: orNothing(Name),
  /** First and last week; the last 104 weeks when left out. */
  from: orNothing(Week), until: orNothing(Week),
})

/** Reports of one problem on one host in one district in one week. */
export const WeekCount = z.object({
  problem: z.string(), host: z.string(), district: z.string().nullable(), week: Week,
  /** By weight: settled ones count 1, concluded ones their probability. */
  reports: z.number(),
  /** Cases behind them, and of those the settled ones. */
  cases: z.number().int(), settled: z.number().int(),
}).meta({ id: 'WeekCount' })

export const WeekCounts = z.object({
  from: Week, until: Week,
  counts: z.array(WeekCount),
  /** Names of what the counts name. */
  problemNames: z.record(z.string(), z.string()), hostNames: z.record(z.string(), z.string()),
}).meta({ id: 'WeekCounts' })

/** One week of one problem beside the same week of earlier years. */
export const WeekBeside = z.object({
  week: Week,
  /** The day it begins on. */
  monday: z.iso.date(),
  reports: z.number(), cases: z.number().int(), settled: z.number().int(),
  /** Mean of earlier years with its 95 % interval (Garwood 1936); null without an earlier year on record. */
  usual: z.object({ mean: z.number(), low: z.number(), high: z.number(), years: z.number().int() }).nullable(),
}).meta({ id: 'WeekBeside' })

/** Whether the last week's reports rise unusually. */
export const RiseLine = z.object({
  /** Null when there are too few records to say. */
  method: z.enum(['historical limits', 'C2']).nullable(),
  unusual: z.boolean(),
  count: z.number(), mean: z.number().nullable(), limit: z.number().nullable(),
  /** Whole earlier years on record. */
  years: z.number().int(),
  /** What the method is and what it cannot see, in a sentence or two. */
  note: z.string(),
}).meta({ id: 'RiseLine' })

/** One problem's year: its weeks, and whether the last one stands out. */
export const ProblemSeason = z.object({
  problem: z.string(), name: z.string(), watch: z.boolean(), district: z.string().nullable(),
  weeks: z.array(WeekBeside), rise: RiseLine,
}).meta({ id: 'ProblemSeason' })

export const SeasonSearch = z.object({
  district: orNothing(Name),
  /** One problem alone. */
  problem: orNothing(Name),
  /** The last week shown; this week when left out. */
  until: orNothing(Week),
})

/**
 * The problems that were reported in the year that ends with one week: those that rise unusually first, then by reports in
 * the last four weeks, then in the year. At most sixty; `more` says how many are left out.
 */
export const SeasonView = z.object({
  district: z.string().nullable(), from: Week, until: Week,
  /** The day on which the last week begins. */
  monday: z.iso.date(),
  /** The week to look at before it, and after it; none after this week. */
  weekBefore: Week, weekAfter: Week.nullable(),
  /** True while reports made up for the demonstration are among these. */
  invented: z.boolean(),
  /** The first week on record; null while there is none. */
  recordsFrom: Week.nullable(),
  problems: z.array(ProblemSeason), more: z.number().int(),
}).meta({ id: 'SeasonView' })

/** The first report of a watch problem in a district in an ISO year. */
export const WatchNotice = z.object({
  notice: z.string(), problem: z.string(), name: z.string(),
  /** Null when the asker named no district. */
  district: z.string().nullable(), districtName: z.string().nullable(),
  year: z.number().int(), at: z.string(),
  basis: z.enum(['settled', 'concluded']),
  /** The ticket of the case, when it has one. */
  ticket: z.string().nullable(),
  /** False when the case has been settled otherwise since. */
  stands: z.boolean(),
  /** Who has put it aside, and when; null while nobody has. */
  seen: z.object({ by: z.string(), at: z.string() }).nullable(),
}).meta({ id: 'WatchNotice' })

/** Notices not yet put aside first, the newest first; of the others the last hundred. */
export const WatchNotices = z.object({ notices: z.array(WatchNotice) }).meta({ id: 'WatchNotices' })
export const NoticeId = z.string().regex(/^[0-9]{1,12}$/)

/** What the season moves in a district today. */
export const PlausibleTable = z.object({
  district: z.string(), districtName: z.string(), on: z.string(),
  problems: z.array(z.object({ problem: z.string(), name: z.string(), moved: MovedLine })),
}).meta({ id: 'PlausibleTable' })
export const PlausibleSearch = z.object({ district: Name })

export type MoveReasonLine = z.infer<typeof MoveReasonLine>
export type MovedLine = z.infer<typeof MovedLine>
export type PresenceState = z.infer<typeof PresenceState>
export type PresenceRow = z.infer<typeof PresenceRow>
export type PresenceTable = z.infer<typeof PresenceTable>
export type SetPresence = z.infer<typeof SetPresence>
export type PlausibleSearch = z.infer<typeof PlausibleSearch>
export type WeeksSearch = z.infer<typeof WeeksSearch>
export type WeekCount = z.infer<typeof WeekCount>
export type WeekCounts = z.infer<typeof WeekCounts>
export type WeekBeside = z.infer<typeof WeekBeside>
export type RiseLine = z.infer<typeof RiseLine>
export type ProblemSeason = z.infer<typeof ProblemSeason>
export type SeasonSearch = z.infer<typeof SeasonSearch>
export type SeasonView = z.infer<typeof SeasonView>
export type WatchNotice = z.infer<typeof WatchNotice>
export type WatchNotices = z.infer<typeof WatchNotices>
export type PlausibleTable = z.infer<typeof PlausibleTable>
