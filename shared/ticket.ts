import { z } from 'zod'
import { CaseView, CheckCard, Contact, LikelyLine, MAX_WORDS, Reply, TicketState } from './case.js'
import { Language } from './language.js'
import { Person } from './people.js'

export const TicketId = z.string().regex(/^[0-9]{1,12}$/)

const Name = z.string().trim().min(1).max(80)
const Text = z.string().trim().min(1).max(MAX_WORDS)
const Day = z.iso.date()
/** Empty fields of a search form count as not given. */
const orNothing = <Schema extends z.ZodType>(schema: Schema) => z.preprocess((sent) => (sent === '' ? undefined : sent), schema.optional())

/** One row of the list of tickets. */
export const TicketRow = z.object({
  ticket: z.string(), state: TicketState, openedAt: z.string(), words: z.string(),
  host: z.string().nullable(), hostName: z.string().nullable(), district: z.string().nullable(),
  /** Plants that the words may mean, best first, at most two; empty once the plant is settled. */
  plantGuesses: z.array(z.string()),
  /** The language that the asker writes and reads in. */
  language: Language,
  urgent: z.boolean(),
  /** Why it stands where it stands: 'Red flag: …', 'Waiting 3 hours', 'Could be late blight, to be reported'. */
  why: z.string(),
  takenBy: z.string().nullable(),
  /** From when on it has waited for the helpline: since it was opened, or since the asker last answered. */
  waitsSince: z.string(),
  /** When the region aims to have answered it; null while it does not wait for the helpline (asked back, sample, settled). */
  dueAt: z.string().nullable(),
  late: z.boolean(),
  /** The problem it was settled as, or the likeliest so far, where its share is at least a half; else null. */
  problemName: z.string().nullable(),
}).meta({ id: 'TicketRow' })

export const TicketList = z.object({ tickets: z.array(TicketRow) }).meta({ id: 'TicketList' })

/** Which tickets to list. Everything that is given must fit; 'open' is every ticket neither settled nor merged. */
export const TicketSearch = z.object({
  state: orNothing(z.enum([...TicketState.options, 'open', 'any'])).transform((state) => state ?? 'waiting'),
  /** Words that must all occur in the asker's words, notes, plant or problem, or a ticket's number. */
  words: orNothing(z.string().trim().max(200)),
  host: orNothing(Name), problem: orNothing(Name), district: orNothing(Name),
  /** The name of the specialist who has it. */
  with: orNothing(Name),
  /** Opened on these days, both included. */
  from: orNothing(Day), until: orNothing(Day),
})

/** One line of a ticket's history. */
export const TicketEvent = z.object({
  at: z.string(),
  /** Null when it was the asker. */
  by: z.string().nullable(), what: z.string(),
  /** Closed word for what happened, such as 'taken' or 'settled'. */
  kind: z.string(),
})

/** What may be done with a ticket. */
export const TicketMove = z.enum([
  'take', 'give back', 'hand on', 'ask back', 'send sample', 'record result', 'settle', 'amend', 'reopen', 'merge', 'unmerge',
]).meta({ id: 'TicketMove' })

export const TicketReply = Reply.extend({
  by: z.string().nullable(),
  /** False for an answer that was changed or taken back since. */
  stands: z.boolean(),
}).meta({ id: 'TicketReply' })

export const TicketQuestion = z.object({
  text: z.string(), at: z.string(), by: z.string(), photos: z.boolean(), answered: z.boolean(),
  checks: z.array(z.object({ check: CheckCard, answer: z.string().nullable(), fresh: z.boolean() })),
}).meta({ id: 'TicketQuestion' })

export const LabSample = z.object({
  number: z.string(), packed: z.string(), at: z.string(), by: z.string(),
  result: z.object({ text: z.string(), at: z.string(), by: z.string() }).nullable(),
}).meta({ id: 'LabSample' })

/** One line of who did what when. */
export const Reading = z.object({ by: z.string(), at: z.string() }).meta({ id: 'Reading' })

export const TicketView = z.object({
  ticket: z.string(), state: TicketState, openedAt: z.string(), takenBy: z.string().nullable(),
  urgent: z.boolean(), why: z.string(), waitsSince: z.string(), dueAt: z.string().nullable(), late: z.boolean(),
  /** What the asker or volunteer wrote when handing over. */
  note: z.string().nullable(),
  /** True when the asker left contact details that are not erased yet; `GET contact` shows them, and is written down. */
  contactGiven: z.boolean(),
  case: CaseView, differential: z.array(LikelyLine), history: z.array(TicketEvent),
  /** Every answer ever given, first one first. */
  replies: z.array(TicketReply),
  /** Everything ever asked back, first one first. */
  questions: z.array(TicketQuestion),
  samples: z.array(LabSample),
  /** For colleagues only; never shown to the asker. */
  colleagueNotes: z.array(z.object({ text: z.string(), by: z.string(), at: z.string() })),
  related: z.array(TicketRow),
  /** Repeats that were merged into this one. */
  merged: z.array(TicketRow),
  /** The ticket that this one was merged into. */
  mergedInto: z.string().nullable(),
  /** Other tickets left with the same e-mail address or telephone number; candidates for merging. */
  sameAsker: z.array(TicketRow),
  /** When this ticket was last kept as a casebook case, or null. */
  casebook: Reading.nullable(),
  /** What the person who looks may do now. */
  moves: z.array(TicketMove),
}).meta({ id: 'TicketView' })

/** The asker's contact details, with everybody who has read them before. */
export const TicketContact = z.object({ contact: Contact.nullable(), readBefore: z.array(Reading) }).meta({ id: 'TicketContact' })

export const Outcome = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('problem'), problem: z.string().min(1).max(80) }),
  z.strictObject({ kind: z.literal('not known') }),
  z.strictObject({ kind: z.literal('not a plant problem') }),
])

/** A settled case as the specialist may keep it for the casebook. */
export const CasebookWish = z.strictObject({
  /** The asker's words, cleaned of personal data; begun from the review, changed as the specialist sees fit. */
  words: Text,
})

export const SettleTicket = z.strictObject({
  /** The answer the asker will read. */
  text: Text,
  outcome: Outcome,
  /** Set to keep the case for the casebook in the same step. */
  casebook: CasebookWish.optional(),
  /** Kinds of the review's suggestions that are to be kept for whoever writes the tree. */
  suggest: z.array(z.enum(['entry phrase', 'deciding check'])).max(2).optional(),
}).meta({ id: 'SettleTicket' })

/** What settling would lead to; nothing is kept. */
export const ReviewTicket = z.strictObject({ outcome: Outcome }).meta({ id: 'ReviewTicket' })

/** A casebook case before it is kept. */
export const CasebookDraft = z.object({
  words: z.string(),
  /** What was taken out of the words, by kind: 'e-mail address', 'telephone number', 'name', 'address'. */
  removed: z.array(z.object({ kind: z.string(), count: z.number().int() })),
  /** The case as it would stand in trees/casebook. */
  yaml: z.string(),
}).meta({ id: 'CasebookDraft' })

export const TreeSuggestion = z.object({
  kind: z.enum(['entry phrase', 'deciding check']),
  host: z.string(), hostName: z.string(), problem: z.string(), problemName: z.string(),
  /** One sentence for the tree's author. */
  text: z.string(),
  /** The phrase that is missing, for 'entry phrase'. */
  phrase: z.string().nullable(),
  /** The check that would have decided it, for 'deciding check'. */
  check: CheckCard.nullable(),
  /** Its expected gain between the leading problem and the true one, in bits. */
  gainBits: z.number().nullable(),
}).meta({ id: 'TreeSuggestion' })

export const SettleReview = z.object({
  /** Null when the case makes no casebook case; `whyNoCasebook` then says why. */
  casebook: CasebookDraft.nullable(), whyNoCasebook: z.string().nullable(),
  suggestions: z.array(TreeSuggestion),
}).meta({ id: 'SettleReview' })

export const AskBack = z.strictObject({
  text: z.string().trim().max(MAX_WORDS).default(''),
  /** Checks of the guide, by name. */
  checks: z.array(Name).max(12).default([]),
  photos: z.boolean().default(false),
}).refine(({ text, checks, photos }) => text !== '' || checks.length > 0 || photos, 'ask something: words, a check or photos')
  .meta({ id: 'AskBack' })

export const SendSample = z.strictObject({
  /** The laboratory's or the helpline's number on the packet. */
  number: z.string().trim().min(1).max(60),
  packed: Text,
}).meta({ id: 'SendSample' })

export const RecordResult = z.strictObject({ number: z.string().trim().min(1).max(60), text: Text }).meta({ id: 'RecordResult' })
export const HandOn = z.strictObject({ to: Name }).meta({ id: 'HandOn' })
export const NoteForColleagues = z.strictObject({ text: Text }).meta({ id: 'NoteForColleagues' })
export const OtherTicket = z.strictObject({ ticket: TicketId }).meta({ id: 'OtherTicket' })
export const Colleagues = z.object({ people: z.array(Person) }).meta({ id: 'Colleagues' })

/** Cases kept for the casebook, and the whole as a YAML file for trees/casebook. */
export const KeptCases = z.object({
  cases: z.array(z.object({ ticket: z.string(), by: z.string(), at: z.string(), words: z.string(), yaml: z.string() })),
  yaml: z.string(),
}).meta({ id: 'KeptCases' })

export const KeptSuggestions = z.object({
  suggestions: z.array(TreeSuggestion.extend({ ticket: z.string(), by: z.string(), at: z.string() })),
}).meta({ id: 'KeptSuggestions' })

export type TicketRow = z.infer<typeof TicketRow>
export type TicketList = z.infer<typeof TicketList>
export type TicketSearch = z.infer<typeof TicketSearch>
export type TicketEvent = z.infer<typeof TicketEvent>
export type TicketMove = z.infer<typeof TicketMove>
export type TicketReply = z.infer<typeof TicketReply>
export type TicketQuestion = z.infer<typeof TicketQuestion>
export type LabSample = z.infer<typeof LabSample>
export type TicketView = z.infer<typeof TicketView>
export type TicketContact = z.infer<typeof TicketContact>
export type Outcome = z.infer<typeof Outcome>
export type SettleTicket = z.infer<typeof SettleTicket>
export type ReviewTicket = z.infer<typeof ReviewTicket>
export type CasebookDraft = z.infer<typeof CasebookDraft>
export type TreeSuggestion = z.infer<typeof TreeSuggestion>
export type SettleReview = z.infer<typeof SettleReview>
export type AskBack = z.infer<typeof AskBack>
export type SendSample = z.infer<typeof SendSample>
export type RecordResult = z.infer<typeof RecordResult>
export type HandOn = z.infer<typeof HandOn>
export type NoteForColleagues = z.infer<typeof NoteForColleagues>
export type OtherTicket = z.infer<typeof OtherTicket>
export type Colleagues = z.infer<typeof Colleagues>
export type KeptCases = z.infer<typeof KeptCases>
export type KeptSuggestions = z.infer<typeof KeptSuggestions>
