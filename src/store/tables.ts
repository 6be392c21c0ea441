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
  duty: DutyTable
  request_count: RequestCountTable
  photo: PhotoTable
  photo_upload: PhotoUploadTable
  ticket_reply: TicketReplyTable
  ticket_note: TicketNoteTable
  ticket_question: TicketQuestionTable
  lab_sample: LabSampleTable
  lab_result: LabResultTable
  ticket_relation: TicketRelationTable
  ticket_seek: TicketSeekTable
  contact_sealed: ContactSealedTable
  contact_read: ContactReadTable
  casebook_case: CasebookCaseTable
  tree_suggestion: TreeSuggestionTable
  invitation: InvitationTable
  code_secret: CodeSecretTable
  recovery_code: RecoveryCodeTable
  helpline_setting: HelplineSettingTable
  person_change: PersonChangeTable
  outbox: OutboxTable
  season_report: SeasonReportTable
  presence_change: PresenceChangeTable
  weekly_note: WeeklyNoteTable
  invented_count: InventedCountTable
  watch_notice: WatchNoticeTable
  weather_station: WeatherStationTable
  weather_read: WeatherReadTable
  weather_day: WeatherDayTable
  weather_hour: WeatherHourTable
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

/** Contact details, encrypted; apart from the ticket, so that they can be erased and the ticket kept. */
export interface ContactSealedTable {
  ticket_id: number
  sealed: string
  /** Keyed digests, by which a repeat of the same asker is known without reading the address. */
  email_mark: string | null
  phone_mark: string | null
}

/** Who has read the contact details of a ticket. Append-only. */
export type ContactReadTable = TicketHappeningTable

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

/** Append-only. */
export interface TicketChangeTable {
  id: Generated<number>
  ticket_id: number
  at: string
  person_id: number | null
  /** JSON. */
  what: string
}

/** Contact details from before they were sealed; emptied at the next start. */
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

/** A weather station. */
export interface WeatherStationTable {
  id: Generated<number>
  /** What people call it in commands and addresses, of small letters, digits and hyphens. */
  name: string
  /** What is shown of it. */
  title: string
  /** Id of the district of region.yaml that it stands for. */
  district: string
  /** Degrees, north and east positive. */
  latitude: number
  longitude: number
  /** Minutes by which its clock is ahead of UTC, all year round. */
  clock_minutes: number
  /** 1 when made up for the demonstration. */
  invented: Generated<number>
}

/** One reading of a weather file, or of an address, and what came of it. */
export interface WeatherReadTable {
  id: Generated<number>
  station_id: number
  /** The file's name, or the address without what may be secret in it. */
  origin: string
  begun_at: string
  /** Null while it goes on, or when it broke off. */
  ended_at: string | null
  /** 'kept', 'refused' or 'failed'; null until it has ended. */
  outcome: string | null
  /** How many records it brought. */
  kept: number
  /** How many faults it had. */
  faults: number
  /** What was wrong, in words for people. */
  why: string | null
}

/** A day by the station's clock. Null where nothing was measured. */
export interface WeatherDayTable {
  station_id: number
  /** ISO date. */
  day: string
  min_c: number | null
  max_c: number | null
  rain_mm: number | null
  /** The reading that brought it last. */
  read_id: number
}

/** An hour by the station's clock. Null where nothing was measured. */
export interface WeatherHourTable {
  station_id: number
  /** When it begins, as 2026-06-01T05. */
  hour: string
  temperature_c: number | null
  humidity_pct: number | null
  rain_mm: number | null
  wet_minutes: number | null
  read_id: number
}

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
