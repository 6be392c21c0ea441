import { z } from 'zod'
import { CaseView, MAX_WORDS, Revision } from './case.js'

/** One call on the volunteer's desk. */
export const CallRow = z.object({
  link: z.string(), words: z.string(), hostName: z.string().nullable(), openedAt: z.string(),
  stepKind: z.string(), handedOver: z.boolean(),
}).meta({ id: 'CallRow' })
export const CallList = z.object({ calls: z.array(CallRow) }).meta({ id: 'CallList' })

export const NoteCall = z.strictObject({
  revision: Revision, text: z.string().trim().min(1).max(MAX_WORDS),
}).meta({ id: 'NoteCall' })

export const CallView = CaseView
export type CallRow = z.infer<typeof CallRow>
export type CallList = z.infer<typeof CallList>
export type NoteCall = z.infer<typeof NoteCall>
