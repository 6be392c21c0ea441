import { z } from 'zod'

export const MailId = z.string().regex(/^[0-9]{1,12}$/)

/** A letter that did not go out at its first try. It says nothing of the person it is for. */
export const MailRow = z.object({
  mail: z.string(),
  /** What it tells: that the ticket was received, that the specialist asks back, and so on. */
  about: z.enum(['received', 'asked back', 'answered', 'urgent', 'invitation', 'first report']),
  ticket: z.string().nullable(),
  /** True when it is not tried any more until a person says so. */
  stuck: z.boolean(),
  tries: z.number().int(), madeAt: z.string(),
  /** When it is tried next; null for a stuck one. */
  nextAt: z.string().nullable(),
  /** What came of the last try, as a sentence. */
  why: z.string(),
}).meta({ id: 'MailRow' })

export const MailView = z.object({
  /** False where the service is not set up to send mail: then nobody gets any, and staff should know. */
  on: z.boolean(),
  waiting: z.number().int(),
  /** Stuck letters first. */
  troubled: z.array(MailRow),
}).meta({ id: 'MailView' })

export type MailRow = z.infer<typeof MailRow>
export type MailView = z.infer<typeof MailView>
