import type { Generated } from 'kysely'

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
  /** SHA-256 of the sender's key for opening it, hex; null when it sent none. */
  opening_key_hash: string | null
  /** The worked case that is only practised; null for a real case. */
  practice: string | null
  /** The language that the asker is spoken to in, as a tag of BCP 47. */
  language: Generated<string>
  /** JSON: what the season made likelier or less likely when the case was opened; null when nothing. */
  plausible: Generated<string | null>
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
