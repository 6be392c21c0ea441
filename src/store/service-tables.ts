import type { Generated } from 'kysely'

/** Work that one process at a time does. */
export interface DutyTable {
  name: string
  /** When it was last begun; null when never. */
  begun_at: string | null
  /** Who has the lease, on a database without locks that end with their connection. */
  holder: string | null
  held_until: string | null
}

/** Letters that are to be sent. No address and no words of anyone: those are read when it is sent, or sealed. */
export interface OutboxTable {
  id: Generated<number>
  /** What the letter is about, once: the same event never makes two. */
  mail_key: string
  /** JSON: the kind of letter and what it is about. */
  mail_order: string
  ticket_id: number | null
  /** Encrypted: what cannot be read from elsewhere when it is sent. */
  sealed: string | null
  /** 'waiting', 'sent', 'stuck' or 'dropped'. */
  state: string
  tries: number
  made_at: string
  trying_since: string
  /** When it is due; of a claimed one, when its claim runs out. */
  next_at: string
  claim: string | null
  ended_at: string | null
  /** What came of the last try in vain. */
  why: string | null
}

/** Requests of one address in one minute. */
export interface RequestCountTable {
  /** SHA-256 of kind and address, hex. */
  count_key: string
  /** End of the minute. */
  until: string
  times: number
}
