export { advanceCase, caseById, caseByLink, caseByOpeningKey, caseStanding, closeCall, insertCase, openCallsOf } from './cases.js'
export type { CaseRow } from './cases.js'
export { appendCaseChange, caseChanges, caseChangesSince } from './case-changes.js'
export type { CaseChangeRow } from './case-changes.js'
export {
  allContacts, appendContactRead, contactOf, contactReadsOf, contactsSettledBefore, eraseContact, keepContact,
  removeUnsealedContact, ticketsWithMark, unsealedContacts,
} from './contacts.js'
export type { ContactRow } from './contacts.js'
export { copySqlite, picturesNamedIn } from './copy-sqlite.js'
export { runDuty } from './duties.js'
export type { Duty } from './duties.js'
export { announce, announceCase, ANYTHING } from './news.js'
export type { News } from './news.js'
export { ERASED, forgetMailWords, overwriteCaseWords, overwriteReply, overwriteTicketWords } from './erasing.js'
export { hasStore } from './has-store.js'
export { appendHelplineSetting, appendPersonChange, helplineSetting } from './helpline-settings.js'
export { insertInvitation, openInvitation, openInvitations, spendInvitation, withdrawInvitations } from './invitations.js'
export {
  allCodeSecrets, codeSecretOf, confirmCodeSecret, deleteCodes, keepCodeSecret, keepRecoveryCodes, peopleWithCodes,
  recoveryCodesLeft, spendRecoveryCode, takeStep,
} from './one-time-codes.js'
export { appendPresenceChange, lastPresenceChange, presenceChanges } from './presence-changes.js'
export type { PresenceChangeRow } from './presence-changes.js'
export { reachStore } from './reach-store.js'
export { countRequest, forgetRequestCountsBefore } from './request-counts.js'
export { ticketCounts } from './ticket-counts.js'
export {
  askerOfCases, caseIdsAfter, casesOfTickets, countReports, dropSeasonReport, firstCountedWeek, forgetAskerOfReports, keepSeasonReport,
  markRepeat, reportsOfAsker, seasonReportOf,
} from './season-reports.js'
export type { CountQuery, CountRow, SeasonReportRow } from './season-reports.js'
export { hasInventedSeason, keepInventedCounts, removeInventedSeason } from './invented-season.js'
export { settledCasesOn } from './settled-cases.js'
export type { SettledCase } from './settled-cases.js'
export { openStore, STORE_FILE } from './open-store.js'
export type { StoreSettings } from './open-store.js'
export {
  claimMail, countWaitingMail, dropMail, forgetMailBefore, giveUpMail, insertMail, keepMailSealed, markMailSent, nextMailAt, postponeMail,
  retryMail, sealedMail, troubledMail,
} from './outbox.js'
export type { OutboxRow } from './outbox.js'
export { countPeople, insertPerson, keepPassword, keepRole, markPersonRemoved, peopleNow, personById, personByName } from './people.js'
export type { PersonRow } from './people.js'
export {
  insertPhoto, insertPhotoUpload, isPictureInUse, markPhotoRemoved, markPhotosRemoved, photoByLink, photoByUpload, photosEverOf,
} from './photos.js'
export type { PhotoRow } from './photos.js'
export {
  deleteOtherSessionsOf, deleteSession, deleteSessionsOf, deleteSpentSessions, insertSession, personBySession, sessionCounts,
} from './sessions.js'
export {
  forgetSignInAttempt, forgetSignInAttemptsBefore, keepSignInAttempt, signInAttempt,
} from './sign-in-attempts.js'
export type { Db, Store } from './store.js'
export type { Tables } from './tables.js'
export { appendTicketChange, ticketChanges } from './ticket-changes.js'
export type { TicketChangeRow } from './ticket-changes.js'
export {
  appendCasebookCase, appendNote, appendQuestion, appendReply, appendResult, appendSample, appendSuggestion, casebookCases,
  checksAskedBack, colleagueNotesOf, dropKeptFromTicket, markQuestionAnswered, questionsOf, repliesOf, resultsOf, samplesOf, treeSuggestions,
  treeSuggestionsOf,
} from './ticket-papers.js'
export type { TicketQuestionRow } from './ticket-papers.js'
export { relatedTo, relateTickets, unrelateTickets } from './ticket-relations.js'
export { keepTicketSeek, searchTickets } from './ticket-search.js'
export {
  advanceTicket, insertTicket, raiseTicket, ticketByCase, ticketById, ticketsById, ticketsHeldBy, ticketsMergedInto,
} from './tickets.js'
export type { TicketAdvance, TicketWithTaker } from './tickets.js'
export {
  beginWeatherRead, endWeatherRead, forgetEmptyWeatherReads, lastWeatherReads, weatherVersion, type WeatherReadRow,
} from './weather-reads.js'
export { appendWeeklyNote, publishedNotes, type WeeklyNoteRow, weeklyNotesOf } from './weekly-notes.js'
export {
  keepWeatherDays, keepWeatherHours, lastWeatherRecords, type LastRecords, weatherDays, weatherHours, weatherHoursAsDays, type DayOfHours,
} from './weather-records.js'
export { insertWeatherStation, weatherStationByName, weatherStations, weatherStationsOf, type WeatherStationRow } from './weather-stations.js'
export { markNoticeSeen, noticeStands, raiseWatchNotice, watchNotice, watchNotices } from './watch-notices.js'
export type { WatchNoticeRow } from './watch-notices.js'
