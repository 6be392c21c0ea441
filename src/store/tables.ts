import type {
  CaseChangeTable, CaseFileTable, PhotoTable, PhotoUploadTable,
} from './case-tables.js'
import type {
  CasebookCaseTable, ContactReadTable, ContactSealedTable, ContactTable, LabResultTable, LabSampleTable, TicketChangeTable,
  TicketNoteTable, TicketQuestionTable, TicketRelationTable, TicketReplyTable, TicketSeekTable,
  TicketTable, TreeSuggestionTable,
} from './ticket-tables.js'
import type {
  CodeSecretTable, HelplineSettingTable, InvitationTable, PersonChangeTable, PersonTable, RecoveryCodeTable, SessionTable, SignInAttemptTable,
} from './people-tables.js'
import type {
  DutyTable, OutboxTable, RequestCountTable,
} from './service-tables.js'
import type {
  InventedCountTable, PresenceChangeTable, SeasonReportTable, WatchNoticeTable, WeeklyNoteTable,
} from './season-tables.js'
import type {
  WeatherDayTable, WeatherHourTable, WeatherReadTable, WeatherStationTable,
} from './weather-tables.js'

export type * from './case-tables.js'
export type * from './people-tables.js'
export type * from './season-tables.js'
export type * from './service-tables.js'
export type * from './ticket-tables.js'
export type * from './weather-tables.js'

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
