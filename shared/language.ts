import { z } from 'zod'

/** The languages that askers are spoken to in, as tags of BCP 47 (RFC 5646). The guide itself is written in the first one. */
export const Language = z.enum(['en', 'es']).meta({ id: 'Language' })
export type Language = z.infer<typeof Language>
