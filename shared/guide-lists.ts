import { z } from 'zod'
import { CheckCard, EntryOffer, FlagCard, HostOffer, MAX_WORDS } from './case.js'
import { Language } from './language.js'

/** Texts of a list that have no translation yet, and so stand in the guide's own language; left out where there are none. */
const Untranslated = z.array(z.string()).optional()

/** A plant to choose from, or a job in the garden: when to prune, how to move. */
export const HostRow = z.object({ host: z.string(), name: z.string(), called: z.array(z.string()), job: z.literal(true).optional() }).meta({ id: 'HostRow' })
export const HostRows = z.object({ hosts: z.array(HostRow), untranslated: Untranslated }).meta({ id: 'HostRows' })

/** A complaint to choose from: an entry of the host's tree. */
export const ComplaintRow = z.object({ node: z.string(), phrases: z.array(z.string()) }).meta({ id: 'ComplaintRow' })
export const ComplaintRows = z.object({ complaints: z.array(ComplaintRow), untranslated: Untranslated }).meta({ id: 'ComplaintRows' })

export const ProblemRow = z.object({ problem: z.string(), name: z.string(), what: z.string() }).meta({ id: 'ProblemRow' })
/** Problems with their plants and the text a specialist may start an answer from. */
export const ProblemRows = z.object({
  problems: z.array(ProblemRow.extend({
    plants: z.array(z.object({ host: z.string(), name: z.string() })),
    advice: z.string(),
    /** Sentences of the guide's advice that the text leaves out, because they send the asker to a specialist. */
    leftOut: z.array(z.string()),
  })),
}).meta({ id: 'ProblemRows' })

/** The checks that tell the problems of a plant apart, for a specialist to ask back. */
export const CheckRows = z.object({ checks: z.array(CheckCard) }).meta({ id: 'CheckRows' })

export const RegionView = z.object({
  name: z.string(), helpline: z.string(), demonstration: z.boolean(), units: z.string(), language: z.string(),
  districts: z.array(z.object({ district: z.string(), name: z.string() })),
  /** Hours within which a specialist aims to answer. */
  answerWithinHours: z.number(),
  /** Whether an asker who leaves a mail address gets letters; where not, they come back by their link alone. */
  sendsMail: z.boolean(),
}).meta({ id: 'RegionView' })

export const Suggest = z.strictObject({ words: z.string().trim().min(1).max(MAX_WORDS) }).meta({ id: 'Suggest' })
/** What the words so far would lead to; nothing is kept. */
export const Suggestions = z.object({
  hosts: z.array(HostOffer), entries: z.array(EntryOffer), cards: z.array(FlagCard),
}).meta({ id: 'Suggestions' })

/** The language in which a list's texts are wanted; left out, the guide's own. */
export const InLanguage = z.object({ language: Language.optional() })

export type HostRow = z.infer<typeof HostRow>
export type HostRows = z.infer<typeof HostRows>
export type ComplaintRow = z.infer<typeof ComplaintRow>
export type ComplaintRows = z.infer<typeof ComplaintRows>
export type ProblemRows = z.infer<typeof ProblemRows>
export type CheckRows = z.infer<typeof CheckRows>
export type RegionView = z.infer<typeof RegionView>
export type Suggestions = z.infer<typeof Suggestions>
