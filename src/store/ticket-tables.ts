import type { Generated } from 'kysely'

export interface TicketTable {
  id: Generated<number>
  case_id: number
  state: string
  /** 0 not urgent; 1 a problem to be reported or dangerous; 2 a red flag. */
  urgent: number
  /** Why it is urgent; empty when it is not. */
  why: string
  opened_at: string
  taken_by: number | null
  taken_at: string | null
  settled_at: string | null
  /** JSON: the answer that stands; null while none does. */
  reply: string | null
  /** What the asker or volunteer wrote when handing over. */
  note: string | null
  /** Goes up by one with every change of this row, so that of two who change it at once one is told. */
  version: Generated<number>
  /** The ticket that this repeat was merged into. */
  merged_into: number | null
  /** From when on it has waited for the helpline. */
  waits_since: string
}

/** Append-only. */
export interface TicketChangeTable {
  id: Generated<number>
  ticket_id: number
  at: string
  person_id: number | null
  /** JSON. */
  what: string
}

/** What the tables of one ticket's happenings have in common. Append-only. */
export interface TicketHappeningTable {
  id: Generated<number>
  ticket_id: number
  at: string
  person_id: number
}

/** Every answer ever given. */
export interface TicketReplyTable extends TicketHappeningTable {
  /** JSON. */
  reply: string
}

/** For colleagues only. */
export interface TicketNoteTable extends TicketHappeningTable {
  text: string
}

export interface TicketQuestionTable extends TicketHappeningTable {
  /** The case's revision when it was asked: answers given later are fresh. */
  revision: number
  text: string
  /** JSON: names of checks. */
  checks: string
  photos: number
  answered_at: string | null
}

export interface LabSampleTable extends TicketHappeningTable {
  number: string
  packed: string
}

export interface LabResultTable extends TicketHappeningTable {
  /** Of the sample it belongs to. */
  number: string
  text: string
}

/** Two tickets that have to do with each other, the lower number first. */
export interface TicketRelationTable {
  one_id: number
  other_id: number
}

/** What a ticket is found by; made anew from the ticket whenever it changes. */
export interface TicketSeekTable {
  ticket_id: number
  /** Everything that words may be found in, in small letters. */
  text: string
  host: string | null
  problem: string | null
  district: string | null
}

/** Contact details from before they were sealed; emptied at the next start. */
export interface ContactTable {
  ticket_id: number
  name: string | null
  email: string | null
  phone: string | null
}

/** Contact details, encrypted; apart from the ticket, so that they can be erased and the ticket kept. */
export interface ContactSealedTable {
  ticket_id: number
  sealed: string
  /** Keyed digests, by which a repeat of the same asker is known without reading the address. */
  email_mark: string | null
  phone_mark: string | null
}

/** Settled cases kept for trees/casebook; dropped when their answer stands no more. */
export interface CasebookCaseTable extends TicketHappeningTable {
  words: string
  /** JSON. */
  content: string
}

export interface TreeSuggestionTable extends TicketHappeningTable {
  kind: string
  /** JSON. */
  content: string
}

/** Who has read the contact details of a ticket. Append-only. */
export type ContactReadTable = TicketHappeningTable
