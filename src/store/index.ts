export { advanceCase, caseById, caseByLink, closeCall, insertCase, openCallsOf } from './cases.js'
export type { CaseAdvance, CaseRow } from './cases.js'
export { appendCaseChange, caseChangeAt, caseChanges, caseChangesSince } from './case-changes.js'
export type { CaseChangeRow } from './case-changes.js'
export { contactOf, insertContact } from './contacts.js'
export type { ContactRow } from './contacts.js'
export { openStore, STORE_FILE } from './open-store.js'
export type { StoreSettings } from './open-store.js'
export { countPeople, insertPerson, markPersonRemoved, peopleNow, personByName } from './people.js'
export type { PersonRow } from './people.js'
export {
  insertPhoto, insertPhotoUpload, isPictureInUse, markPhotoRemoved, markPhotosRemoved, photoByLink, photoByUpload, photosEverOf,
} from './photos.js'
export type { PhotoRow } from './photos.js'
export { deleteSession, deleteSessionsOf, deleteSpentSessions, insertSession, personBySession } from './sessions.js'
export {
  forgetSignInAttempt, forgetSignInAttemptsBefore, keepSignInAttempt, signInAttempt,
} from './sign-in-attempts.js'
export type { Db, Store } from './store.js'
export type { Tables } from './tables.js'
export { appendTicketChange, ticketChanges } from './ticket-changes.js'
export type { TicketChangeRow } from './ticket-changes.js'
export {
  insertTicket, markUrgent, settledTickets, settleTicket, takeTicket, ticketByCase, ticketById, ticketsInNeed,
} from './tickets.js'
export type { TicketRecord, TicketWithTaker } from './tickets.js'
