import type { Generated } from 'kysely'

/** What the season counts of one case; a case that counts for nothing has no row. */
export interface SeasonReportTable {
  case_id: number
  problem: string
  host: string
  district: string | null
  /** ISO date. */
  asked_on: string
  /** ISO week, as 2026-W21. */
  week: string
  /** 'settled' or 'concluded'. */
  basis: string
  /** 0 to 1. */
  weight: number
  /** The lowest case number of the same asker; null once anybody of these was erased: then it stays as it is. */
  asker: number | null
  is_repeat: number
}

/** What specialists said of watch problems. Append-only. */
export interface PresenceChangeTable {
  id: Generated<number>
  problem: string
  district: string
  state: string
  /** ISO date. */
  holds_from: string
  why: string
  person_id: number
  at: string
  /** 1 when made up for the demonstration. */
  invented: Generated<number>
}

/** First reports of watch problems, by district and ISO year. */
export interface WatchNoticeTable {
  id: Generated<number>
  problem: string
  /** Empty when the asker named none. */
  district: string
  year: number
  case_id: number
  at: string
  seen_by: number | null
  seen_at: string | null
}

/** What specialists approved for everyone to read, and took back. Append-only: the last row of a week is how it stands. */
export interface WeeklyNoteTable {
  id: Generated<number>
  /** ISO week. */
  week: string
  /** 'approved' or 'taken back'. */
  what: string
  /** The note as everyone reads it, as JSON; null when it was taken back. */
  note: string | null
  person_id: number
  at: string
  /** 1 when made up for the demonstration. */
  invented: Generated<number>
}

/** Reports that were made up for the demonstration. */
export interface InventedCountTable {
  problem: string
  host: string
  district: string
  week: string
  reports: number
  cases: number
  settled: number
}
