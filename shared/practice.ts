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

/** Worked cases that were practised already. */
export const PracticeDone = z.strictObject({ done: z.array(z.string().max(80)).max(3_000) }).meta({ id: 'PracticeDone' })

export type PracticeCall = z.infer<typeof PracticeCall>
export type PracticeTruth = z.infer<typeof PracticeTruth>
