import type { Generated } from 'kysely'

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

export interface InvitationTable {
  /** SHA-256 of the token, hex. */
  token_hash: string
  name: string
  role: string
  made_by: number
  made_at: string
  expires_at: string
  /** When it was used or withdrawn. */
  spent_at: string | null
}

export interface CodeSecretTable {
  person_id: number
  sealed: string
  made_at: string
  /** Null until the person has shown that their app gives the right codes. */
  confirmed_at: string | null
  /** The last time step whose code was taken: no code of it or before is taken again. */
  last_step: number
}

export interface RecoveryCodeTable {
  /** SHA-256 of the person's number and the code, hex. */
  code_hash: string
  person_id: number
  used_at: string | null
}

/** Append-only; the last row counts. */
export interface HelplineSettingTable {
  id: Generated<number>
  at: string
  person_id: number
  /** JSON. */
  content: string
}

/** Append-only. */
export interface PersonChangeTable {
  id: Generated<number>
  at: string
  person_id: number
  /** Null for the command line and for what a person does before they are signed in. */
  by_id: number | null
  what: string
}
