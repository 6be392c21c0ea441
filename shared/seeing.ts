import { z } from 'zod'
import { Week } from './season.js'

/** One problem of a weekly note. */
const SeenProblem = z.object({
  problem: z.string(), name: z.string(),
  /** What is said of it, as plain text. */
  text: z.string(),
  /** Cases of the week, and by district; what is too small to be shown is left out. */
  total: z.number().int().nullable(),
  places: z.array(z.object({ district: z.string(), name: z.string(), count: z.number().int() })),
})

/** What the helpline was asked about in one week, as a specialist has approved it for everyone. */
export const SeeingNote = z.object({
  week: Week,
  /** The day the week begins on. */
  monday: z.iso.date(),
  title: z.string(), lead: z.string(),
  problems: z.array(SeenProblem),
  /** When the first note of this week was approved, and when this one was. */
  published: z.iso.datetime(), updated: z.iso.datetime(),
  /** True for a note of the demonstration. */
  invented: z.boolean(),
}).meta({ id: 'SeeingNote' })

/** The notes of the last weeks, the newest first. */
export const SeeingList = z.object({
  helpline: z.string(), region: z.string(), demonstration: z.boolean(), notes: z.array(SeeingNote),
}).meta({ id: 'SeeingList' })

const Text = z.string().trim().min(1).max(1200)

/** A note as the service drafts it or a specialist has written it. */
export const NoteText = z.strictObject({
  lead: Text,
  problems: z.array(z.strictObject({ problem: z.string().min(1).max(80), text: Text })).max(12),
}).meta({ id: 'NoteText' })

/** The note of one week as specialists see it. */
export const NoteView = z.object({
  week: Week, monday: z.iso.date(),
  /** What the service would write of the week as it stands. */
  draft: NoteText,
  /** Names of the problems that these name. */
  names: z.record(z.string(), z.string()),
  /** What everyone may read now; null when nothing is published for this week. */
  published: SeeingNote.nullable(),
  /** Who approved and took back what, the last first. */
  history: z.array(z.object({ what: z.enum(['approved', 'taken back']), by: z.string(), at: z.iso.datetime() })),
  /** The smallest count that is shown to everyone. */
  leastCount: z.number().int(),
}).meta({ id: 'NoteView' })

export const NoteSearch = z.object({ week: Week.optional() })
export const ApproveNote = z.strictObject({ week: Week, note: NoteText }).meta({ id: 'ApproveNote' })
export const TakeBackNote = z.strictObject({ week: Week }).meta({ id: 'TakeBackNote' })

export type SeeingNote = z.infer<typeof SeeingNote>
export type SeeingList = z.infer<typeof SeeingList>
export type NoteText = z.infer<typeof NoteText>
export type NoteView = z.infer<typeof NoteView>
export type NoteSearch = z.infer<typeof NoteSearch>
export type ApproveNote = z.infer<typeof ApproveNote>
export type TakeBackNote = z.infer<typeof TakeBackNote>
