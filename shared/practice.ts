import { z } from 'zod'

/** A worked case of the casebook, told as its caller told it: a volunteer practises on it. */
export const PracticeCall = z.object({
  /** The worked case's name. */
  practice: z.string(), words: z.string(), district: z.string().nullable(), on: z.string(),
  /** How many worked cases have not been practised, this one among them. */
  left: z.int().min(1),
}).meta({ id: 'PracticeCall' })

/** What the caller of a practice call would see, and how it truly ended. */
export const PracticeTruth = z.object({
  practice: z.string(),
  /** The plant it was about; null where nobody could tell. */
  hostName: z.string().nullable(),
  /** Checks that the caller would answer, in their own words; to every other one they are not sure. */
  answers: z.array(z.object({ check: z.string(), answer: z.string() })),
  ends: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('problem'), problem: z.string(), name: z.string(), alsoRight: z.array(z.object({ problem: z.string(), name: z.string() })) }),
    z.object({ kind: z.literal('hand over') }),
    z.object({ kind: z.literal('red flag'), redFlag: z.string(), title: z.string() }),
  ]),
}).meta({ id: 'PracticeTruth' })

/** Most names of worked cases sent as practised: with names of common length they stay below the largest body taken. */
export const MOST_PRACTISED = 4_000

/** Worked cases that were practised already, the latest last. */
export const PracticeDone = z.strictObject({ done: z.array(z.string().max(80)).max(MOST_PRACTISED) }).meta({ id: 'PracticeDone' })

export type PracticeCall = z.infer<typeof PracticeCall>
export type PracticeTruth = z.infer<typeof PracticeTruth>
