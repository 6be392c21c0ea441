import { z } from 'zod'
import { Language } from './language.js'
import { MovedLine } from './season.js'

/** Longest question or note taken, in characters. */
export const MAX_WORDS = 4000

const Words = z.string().trim().min(1).max(MAX_WORDS)
const Id = z.string().min(1).max(80).regex(/^[a-z0-9][a-z0-9-]*$/, 'a name of small letters, digits and hyphens')

/** The unguessable part of a case's address: 24 random bytes in base64url. */
export const CaseLink = z.string().regex(/^[A-Za-z0-9_-]{32}$/).meta({ id: 'CaseLink' })

/** The case's revision that the sender last saw. Every accepted change adds one. */
export const Revision = z.number().int().min(0).max(1_000_000)

export const FindingOrigin = z.enum(['asked', 'said', 'note', 'photo'])

/**
 * A sender's own random name for one opening, at least 128 bits of it: 22 to 64 characters of base64url. Sent again
 * with the same key, as after a lost reply, it opens nothing new and brings the case it opened.
 */
export const OpeningKey = z.string().regex(/^[A-Za-z0-9_-]{22,64}$/, '22 to 64 random letters, digits, hyphens and underscores').meta({ id: 'OpeningKey' })

export const OpenCase = z.strictObject({
  words: Words,
  district: Id.nullish(),
  key: OpeningKey.optional(),
  /** The language the asker is spoken to in; left out, the one that the request asks for. */
  language: Language.optional(),
  /** A worked case of the casebook that is only practised: for the people of the helpline. */
  practice: Id.optional(),
}).meta({ id: 'OpenCase' })

export const SettlePlace = z.strictObject({
  revision: Revision,
  host: Id,
  /** A node of the host's tree; null starts at the top of the tree. */
  node: Id.nullable(),
}).meta({ id: 'SettlePlace' })

export const AddWords = z.strictObject({ revision: Revision, words: Words }).meta({ id: 'AddWords' })

export const AnswerCheck = z.strictObject({
  revision: Revision,
  check: Id,
  /** An answer label of the check, 'not sure' or "can't look now". */
  answer: z.string().min(1).max(120),
  from: FindingOrigin.optional(),
}).meta({ id: 'AnswerCheck' })

/** Takes an answer back: its check counts as not yet looked at. */
export const TakeBack = z.strictObject({ revision: Revision, check: Id }).meta({ id: 'TakeBack' })

/** Speaks to the asker of a case in another language from now on. */
export const ChangeLanguage = z.strictObject({ revision: Revision, language: Language }).meta({ id: 'ChangeLanguage' })

export const CarryOn = z.strictObject({ revision: Revision }).meta({ id: 'CarryOn' })

export const Contact = z.strictObject({
  name: z.string().trim().max(120).optional(),
  email: z.email().max(254).optional(),
  phone: z.string().trim().max(40).regex(/^[0-9+() .\-x]*$/, 'digits, spaces, + - . x and brackets only').optional(),
  /** When they would like to be called, in their own words. */
  callTime: z.string().trim().max(120).optional(),
}).meta({ id: 'Contact' })

export const HandOver = z.strictObject({
  revision: Revision,
  contact: Contact.optional(),
  note: z.string().trim().max(MAX_WORDS).optional(),
}).meta({ id: 'HandOver' })

export const HeardWords = z.object({ text: z.string(), at: z.number().int() })

export const HostOffer = z.object({
  host: z.string(), name: z.string(), score: z.number(), words: z.array(HeardWords),
}).meta({ id: 'HostOffer' })

export const EntryOffer = z.object({
  host: z.string(), hostName: z.string(), node: z.string(), phrase: z.string(),
  score: z.number(), words: z.array(HeardWords),
}).meta({ id: 'EntryOffer' })

export const CheckCard = z.object({
  id: z.string(), ask: z.string(), how: z.string(), why: z.string(), effort: z.string(),
  /** The check's own answers; 'not sure' and "can't look now" are always allowed besides. */
  answers: z.array(z.string()),
  /** The words to show for an answer, by its name, where they are others: in another language than the guide's. */
  shown: z.record(z.string(), z.string()).optional(),
}).meta({ id: 'CheckCard' })

export const Call = z.object({ name: z.string(), number: z.string() })

export const FlagCard = z.object({
  id: z.string(), title: z.string(), level: z.enum(['emergency', 'caution']),
  doNow: z.array(z.string()), doNot: z.array(z.string()), calls: z.array(Call),
  then: z.enum(['carry on', 'stop']),
  /** What is offered once the asker goes on, besides what they told of: a place in a tree, and its words. */
  afterwards: z.object({ host: z.string(), hostName: z.string(), node: z.string(), offer: z.string() }).optional(),
  /** How to look without coming to harm, to be said beside every check. */
  looking: z.string().optional(),
}).meta({ id: 'FlagCard' })

/** One filled-in line of the sheet: an answered check. */
export const Line = z.object({
  check: CheckCard, answer: z.string(), from: FindingOrigin,
  /** False when the tree's path no longer passes this check; it still counts as evidence. */
  onPath: z.boolean(),
}).meta({ id: 'Line' })

export const ReasonLine = z.object({
  check: z.string(), ask: z.string(),
  /** In the words shown for it. */
  answer: z.string(),
  /** 'usually', 'seldom' and so on; null when the profile does not say. */
  seen: z.string().nullable(),
  weight: z.number(),
}).meta({ id: 'ReasonLine' })

export const LikelyLine = z.object({
  /** Null stands for something not listed here. */
  problem: z.string().nullable(), name: z.string(), what: z.string(),
  probability: z.number().min(0).max(1),
  for: z.array(ReasonLine), against: z.array(ReasonLine),
  /** Set where the season here and now makes it more or less likely. */
  moved: MovedLine.optional(),
}).meta({ id: 'LikelyLine' })

export const SourceLine = z.object({ title: z.string(), by: z.string(), year: z.number().nullable() })

export const AdviceCard = z.object({
  problem: z.string(), name: z.string(), what: z.string(), agent: z.string().nullable(), kind: z.string(),
  /** How sure, in words and as a share: 'very likely', 0.93. */
  sureness: z.string(), probability: z.number(),
  bottomLine: z.string(), doNow: z.array(z.string()), notWorthDoing: z.array(z.string()),
  nextYear: z.array(z.string()),
  /** Months (1 to 12) in which it is mostly seen; empty when it is not bound to any. */
  months: z.array(z.number().int()),
  /** Whole sentences, also where no spray is needed. */
  spray: z.string(), spraysNothing: z.boolean(), cautions: z.array(z.string()),
  /** What to do because this problem must be reported; null when it need not be. */
  escalate: z.string().nullable(), escalateCall: Call.nullable(),
  lookAlikes: z.array(z.object({ problem: z.string(), name: z.string() })),
  sources: z.array(SourceLine), reviewedOn: z.string(),
}).meta({ id: 'AdviceCard' })

/** Why a check is asked once more: 'you said …, most plants with … show …'. */
export const SecondLookNote = z.object({ said: z.string(), problemName: z.string(), usual: z.string() }).meta({ id: 'SecondLookNote' })

/** An answer not yet given that would turn the case to another problem. */
export const TurnLine = z.object({ check: CheckCard, answer: z.string(), toName: z.string() }).meta({ id: 'TurnLine' })

/** A problem that must be reported and cannot be passed over, with what to do about it. */
export const WatchLine = z.object({
  problem: z.string(), name: z.string(), probability: z.number(), escalate: z.string(), call: Call.nullable(),
  moved: MovedLine.optional(),
}).meta({ id: 'WatchLine' })

/** At least and at most so many checks, over all likely answers. One and one: this is the last. */
export const ChecksLeft = z.object({ least: z.number().int(), most: z.number().int() }).meta({ id: 'ChecksLeft' })

export const CaseStep = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('red-flag') }),
  z.object({ kind: z.literal('place') }),
  z.object({
    kind: z.literal('ask'), check: CheckCard,
    /** How many checks are still to come, this one included, on every likely course; null when it cannot be said. */
    left: ChecksLeft.nullable(),
    /** Set when the check is asked a second time, because the answer given is rare with what else was seen. */
    again: SecondLookNote.nullable(),
    /** Set when a specialist will have the case whatever is answered, and this look is for them. */
    isLastLook: z.boolean(),
  }),
  z.object({
    kind: z.literal('conclude'), card: AdviceCard, others: z.array(LikelyLine), why: LikelyLine,
    /** What would change the answer, at most three, likeliest first. */
    turns: z.array(TurnLine), watched: z.array(WatchLine),
  }),
  z.object({
    kind: z.literal('hand-over'), because: z.string(),
    likely: z.array(LikelyLine), unsettled: z.array(CheckCard),
    /** What a laboratory could look at, with how to pack it; null when it would not help. */
    sample: CheckCard.nullable(), watched: z.array(WatchLine),
  }),
]).meta({ id: 'CaseStep' })

/**
 * Where a ticket stands. A merged ticket was a repeat of another; its asker is shown that other one's state and reply.
 *
 *   waiting → taken → asked back ⇄ answered by asker → settled
 *                 ↘ sent as a sample ↗
 */
export const TicketState = z.enum([
  'waiting', 'taken', 'asked back', 'answered by asker', 'sent as a sample', 'settled', 'merged',
]).meta({ id: 'TicketState' })

/** The specialist's word on a ticket, as the asker sees it. */
export const Reply = z.object({
  text: z.string(), problem: z.string().nullable(), problemName: z.string().nullable(),
  outcome: z.enum(['problem', 'not known', 'not a plant problem']), at: z.string(),
}).meta({ id: 'Reply' })

/** A photo of a case. Its address: `photoAddress` in photo.ts. */
export const PhotoView = z.object({
  /** Its number in the case. */
  photo: z.number().int(),
  /** Pixels of the large size. */
  width: z.number().int(), height: z.number().int(),
  at: z.string(),
  /** Who sent it: whoever holds the case's link, or somebody of the helpline who was signed in. */
  from: z.enum(['asker', 'helpline']),
}).meta({ id: 'PhotoView' })

/** What a specialist wants to know from the asker. */
export const AskedBack = z.object({
  /** The specialist's own words; empty when the checks or the wish for photos say it all. */
  text: z.string(), at: z.string(),
  /** The checks asked, each with the answer the case has now; `fresh` when it was given after the asking back. */
  checks: z.array(z.object({ check: CheckCard, answer: z.string().nullable(), fresh: z.boolean() })),
  /** True when photos are wanted. */
  photos: z.boolean(),
  /** True once the asker has answered anything of it: a check, words or a photo. */
  answered: z.boolean(),
}).meta({ id: 'AskedBack' })

/** A sample on its way to a laboratory. */
export const SampleNote = z.object({ number: z.string(), packed: z.string(), at: z.string() }).meta({ id: 'SampleNote' })

export const CaseView = z.object({
  link: CaseLink, revision: Revision,
  /** The language the asker is spoken to in. */
  language: Language,
  /** Texts here that have no translation yet, and so stand in the guide's own language; left out where there are none. */
  untranslated: z.array(z.string()).optional(),
  words: z.array(z.string()), openedAt: z.string(), askedOn: z.string(), district: z.string().nullable(),
  cards: z.array(FlagCard), carriedOn: z.boolean(),
  place: z.object({
    /** `job` where it is no plant but a job in the garden. */
    host: z.object({ host: z.string(), name: z.string(), job: z.literal(true).optional() }).nullable(),
    /** The settled complaint in the words of an entry; null at the top of the tree or before it is settled. */
    node: z.string().nullable(), complaint: z.string().nullable(),
    hosts: z.array(HostOffer), entries: z.array(EntryOffer),
    /** How often the first entry is right where the words were as plain as these. Below 0.5 none should be chosen beforehand. */
    confidence: z.number().min(0).max(1),
    /** True where nothing was heard that a plant helpline can answer. */
    outOfScope: z.boolean(),
  }),
  lines: z.array(Line), notes: z.array(z.object({ text: z.string(), at: z.string() })),
  photos: z.array(PhotoView),
  step: CaseStep,
  ticket: z.object({
    state: TicketState, openedAt: z.string(), contactGiven: z.boolean(),
    /** The answer that stands. */
    reply: Reply.nullable(),
    /** Answers given before and changed since, first one first; they stay visible beside the one that stands. */
    earlierReplies: z.array(Reply),
    /**
     * The open question of the specialist, null when there is none. Answer its checks by `POST answers`, or send words
     * or photos; whatever comes lands on the ticket.
     */
    askedBack: AskedBack.nullable(),
    sample: SampleNote.nullable(),
  }).nullable(),
  /** The worked case that this call practises; null for a real case. */
  practice: z.string().nullable(),
  guide: z.string(),
}).meta({ id: 'CaseView' })

export type OpenCase = z.infer<typeof OpenCase>
export type SettlePlace = z.infer<typeof SettlePlace>
export type AddWords = z.infer<typeof AddWords>
export type AnswerCheck = z.infer<typeof AnswerCheck>
export type TakeBack = z.infer<typeof TakeBack>
export type ChangeLanguage = z.infer<typeof ChangeLanguage>
export type CarryOn = z.infer<typeof CarryOn>
export type Contact = z.infer<typeof Contact>
export type HandOver = z.infer<typeof HandOver>
export type HeardWords = z.infer<typeof HeardWords>
export type HostOffer = z.infer<typeof HostOffer>
export type EntryOffer = z.infer<typeof EntryOffer>
export type CheckCard = z.infer<typeof CheckCard>
export type FlagCard = z.infer<typeof FlagCard>
export type Line = z.infer<typeof Line>
export type ReasonLine = z.infer<typeof ReasonLine>
export type LikelyLine = z.infer<typeof LikelyLine>
export type SecondLookNote = z.infer<typeof SecondLookNote>
export type ChecksLeft = z.infer<typeof ChecksLeft>
export type TurnLine = z.infer<typeof TurnLine>
export type WatchLine = z.infer<typeof WatchLine>
export type AdviceCard = z.infer<typeof AdviceCard>
export type CaseStep = z.infer<typeof CaseStep>
export type TicketState = z.infer<typeof TicketState>
export type Reply = z.infer<typeof Reply>
export type PhotoView = z.infer<typeof PhotoView>
export type AskedBack = z.infer<typeof AskedBack>
export type SampleNote = z.infer<typeof SampleNote>
export type CaseView = z.infer<typeof CaseView>
