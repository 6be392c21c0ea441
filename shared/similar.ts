import { z } from 'zod'

/** One settled case of this season that is like the case at hand. Nobody's words or contact: only what was seen and what it was. */
export const SimilarCase = z.object({
  /** The ticket's number, for specialists; null for whoever may not read tickets. */
  ticket: z.string().nullable(),
  askedOn: z.string(), settledAt: z.string(), district: z.string().nullable(),
  /** What it was settled as: a problem's name, or null where it was not known or no plant problem. */
  problemName: z.string().nullable(),
  outcome: z.enum(['problem', 'not known', 'not a plant problem']),
  /** Checks that both cases answered alike, and those they answered differently. */
  same: z.array(z.object({ ask: z.string(), answer: z.string() })),
  different: z.int().min(0),
}).meta({ id: 'SimilarCase' })

export const SimilarCases = z.object({
  /** The plant that is compared; null while the case has none, and then there are no cases. */
  hostName: z.string().nullable(),
  /** The district that the cases are from; null where the case tells of none, and then they are from all. */
  district: z.string().nullable(),
  /** First day that counts as this season. */
  since: z.string(),
  /** The most alike first. */
  cases: z.array(SimilarCase),
  /** How many more there are on this plant, in this season and district. */
  more: z.int().min(0),
}).meta({ id: 'SimilarCases' })

export type SimilarCase = z.infer<typeof SimilarCase>
export type SimilarCases = z.infer<typeof SimilarCases>
