import { z } from 'zod'

/** Which guide the service answers from, for the people of the helpline. */
export const GuideState = z.object({
  /** Hash of its content. */
  guide: z.string(),
  /** When the service took it up. */
  since: z.string(),
  /** A later change that was not taken up, and why; null when the files on the disk are the guide in use. */
  refused: z.object({ at: z.string(), reason: z.string() }).nullable(),
}).meta({ id: 'GuideState' })

export type GuideState = z.infer<typeof GuideState>
