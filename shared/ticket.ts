import { z } from 'zod'
import { CaseView, Contact, LikelyLine, MAX_WORDS, TicketState } from './case.js'

export const TicketId = z.string().regex(/^[0-9]{1,12}$/)

/** One row of the list of tickets. */
export const TicketRow = z.object({
  ticket: z.string(), state: TicketState, openedAt: z.string(), words: z.string(),
  host: z.string().nullable(), hostName: z.string().nullable(), district: z.string().nullable(),
  urgent: z.boolean(),
  /** Why it stands where it stands: 'Red flag: …', 'Waiting 3 hours', 'Could be late blight, to be reported'. */
  why: z.string(),
  takenBy: z.string().nullable(),
}).meta({ id: 'TicketRow' })

export const TicketList = z.object({ tickets: z.array(TicketRow) }).meta({ id: 'TicketList' })

export const TicketEvent = z.object({ at: z.string(), by: z.string().nullable(), what: z.string() })

export const TicketView = z.object({
  ticket: z.string(), state: TicketState, openedAt: z.string(), takenBy: z.string().nullable(),
  urgent: z.boolean(), why: z.string(),
  /** What the asker or volunteer wrote when handing over. */
  note: z.string().nullable(), contact: Contact.nullable(),
  case: CaseView, differential: z.array(LikelyLine), history: z.array(TicketEvent),
}).meta({ id: 'TicketView' })

export const SettleTicket = z.strictObject({
  /** The answer the asker will read. */
  text: z.string().trim().min(1).max(MAX_WORDS),
  outcome: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('problem'), problem: z.string().min(1).max(80) }),
    z.strictObject({ kind: z.literal('not known') }),
    z.strictObject({ kind: z.literal('not a plant problem') }),
  ]),
}).meta({ id: 'SettleTicket' })

export type TicketRow = z.infer<typeof TicketRow>
export type TicketList = z.infer<typeof TicketList>
export type TicketEvent = z.infer<typeof TicketEvent>
export type TicketView = z.infer<typeof TicketView>
export type SettleTicket = z.infer<typeof SettleTicket>
