import { z } from 'zod'

/**
 * What `GET /api/tickets/events` sends as the data of each event called 'change'. It says that something changed and what
 * to fetch again, and nothing of what it holds.
 */
export const LiveChange = z.object({
  /** The ticket that changed; null when anything may have, as at the beginning of every stream: fetch what is shown again. */
  ticket: z.string().nullable(),
  /** What happened, such as 'taken' (as TicketEvent's kind), 'case' when the asker's case changed, or 'anything'. */
  kind: z.string(),
  /** The colleague who did it; null for the asker, or when it is not known. */
  by: z.string().nullable(),
}).meta({ id: 'LiveChange' })
export type LiveChange = z.infer<typeof LiveChange>
