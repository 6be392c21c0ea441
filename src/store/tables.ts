import type { Generated } from 'kysely'

/**
 * The rows as the store keeps them. Times are ISO text in UTC, yes/no is 1 or 0, and what is JSON is kept as text,
 * so that every database holds the same thing. The desk turns rows into its own types.
 */
export interface Tables {
  case_file: CaseFileTable
  case_change: CaseChangeTable
  ticket: TicketTable
  ticket_change: TicketChangeTable
  contact: ContactTable
  person: PersonTable
  session: SessionTable
  sign_in_attempt: SignInAttemptTable
  photo: PhotoTable
  photo_upload: PhotoUploadTable
}

export interface CaseFileTable {
  id: Generated<number>
  /** The bearer secret in the case's address. */
  link: string
  revision: number
  /** JSON: the evidence after the last change. */
  evidence: string
  /** JSON: the asker's words, one string a message. */
  words: string
  /** ISO date. */
  asked_on: string
  district: string | null
  /** JSON: what was heard in the words. */
  matched: string
  opened_at: string
  /** The volunteer or specialist whose call this is. */
  call_of: number | null
  call_closed_at: string | null
  /** Hash of the guide at the last change. */
  guide_hash: string
}

/** Append-only: one row a revision. */
export interface CaseChangeTable {
  case_id: number
  revision: number
  kind: string
  /** JSON. */
  content: string
  person_id: number | null
  at: string
}

export interface TicketTable {
  id: Generated<number>
  case_id: number
  state: string
  urgent: number
  /** Why it is urgent; empty when it is not. */
  why: string
  opened_at: string
  taken_by: number | null
  taken_at: string | null
  settled_at: string | null
  /** JSON; null until settled. */
  reply: string | null
  /** What the asker or volunteer wrote when handing over. */
  note: string | null
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

/** Apart from the ticket, so that it can be erased and the ticket kept. */
export interface ContactTable {
  ticket_id: number
  name: string | null
  email: string | null
  phone: string | null
}

export interface PersonTable {
  id: Generated<number>
  name: string
  role: string
  password_hash: string
  made_at: string
  removed_at: string | null
}

export interface SessionTable {
  /** SHA-256 of the token, hex; the token itself is only with the person. */
  token_hash: string
  person_id: number
  made_at: string
  expires_at: string
}

export interface SignInAttemptTable {
  /** SHA-256 of 'name:…' or 'address:…', hex. */
  attempt_key: string
  failures: number
  last_at: string
  blocked_until: string | null
}

export interface PhotoTable {
  case_id: number
  /** Counts up in the case. */
  number: number
  /** Content hashes of the two pictures. */
  large_hash: string
  small_hash: string
  /** Pixels and bytes of the large picture. */
  width: number
  height: number
  bytes: number
  /** Null when it came from whoever holds the case's link. */
  person_id: number | null
  at: string
  removed_at: string | null
}

/** Two uploads of the same content lead to one photo. */
export interface PhotoUploadTable {
  case_id: number
  upload_key: string
  number: number
}
