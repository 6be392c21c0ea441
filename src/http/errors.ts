import type { DeskFaultCode } from '../desk/index.js'

/** What can be wrong with a request before the desk sees it, and with the service itself. */
export type RequestFaultCode =
  | 'BODY_DOES_NOT_FIT' | 'QUERY_DOES_NOT_FIT' | 'BROKEN_JSON' | 'UNREADABLE_TEXT' | 'NOT_JSON' | 'TOO_LARGE' | 'BAD_REQUEST'
  | 'FILE_TOO_LARGE' | 'UPLOAD_KEY_DOES_NOT_FIT'
  | 'NOT_SIGNED_IN' | 'NOT_YOUR_ROLE' | 'CODES_TO_SET_UP' | 'OTHER_ORIGIN' | 'TOO_MANY' | 'NO_SUCH_PLACE' | 'WRONG_METHOD' | 'NOT_READY' | 'UNEXPECTED'

export type ErrorCode = DeskFaultCode | RequestFaultCode

export interface ErrorRow {
  readonly status: number
  /** The same for every occurrence. */
  readonly title: string
  /** For people; {names} are filled in with this occurrence's words. */
  readonly sentence: string
}

/** Every fault that a caller can see. A code is never renamed and never used again for something else. */
export const errors: Readonly<Record<ErrorCode, ErrorRow>> = {
  CASE_NOT_FOUND: {
    status: 404, title: 'No such case',
    sentence: 'No case has this link. Check that the whole link was copied, or ask your question anew.',
  },
  STALE_REVISION: {
    status: 409, title: 'The case has changed',
    sentence: 'The case was changed from somewhere else in the meantime. It is shown as it stands now; nothing of this change was kept.',
  },
  CASE_STOPPED: {
    status: 409, title: 'The case has stopped',
    sentence: 'This case does not go on with the plant question. Do what the card says. It can still be handed to a specialist.',
  },
  NO_RED_FLAG: {
    status: 409, title: 'Nothing to acknowledge',
    sentence: 'No warning card is showing, so there is nothing to carry on from.',
  },
  CASE_FULL: {
    status: 409, title: 'The case is full',
    sentence: 'This case takes no more changes. It can still be handed to a specialist.',
  },
  KEY_USED: {
    status: 422, title: 'The key is used',
    sentence: 'Another question was opened with this key. Make a new random key for each question.',
  },
  PLACE_FIRST: {
    status: 409, title: 'The plant comes first',
    sentence: 'No plant is settled yet, so this answer has nothing to weigh. Settle the plant at this case\'s "place" address, then answer.',
  },
  NOT_ANSWERED: {
    status: 409, title: 'Nothing to take back', sentence: 'The check "{check}" has no answer, so there is none to take back.',
  },
  UNKNOWN_HOST: { status: 422, title: 'Unknown plant', sentence: 'The guide has no plant called "{host}".' },
  UNKNOWN_NODE: {
    status: 422, title: 'Unknown complaint', sentence: 'The tree of "{host}" has no node called "{node}".',
  },
  UNKNOWN_CHECK: { status: 422, title: 'Unknown check', sentence: 'The guide has no check called "{check}".' },
  UNKNOWN_ANSWER: {
    status: 422, title: 'Unknown answer',
    sentence: 'The check "{check}" does not take the answer "{answer}". Choose one that it lists, "not sure" or "can\'t look now".',
  },
  UNKNOWN_DISTRICT: {
    status: 422, title: 'Unknown district', sentence: 'The region has no district called "{district}".',
  },
  UNKNOWN_PROBLEM: { status: 422, title: 'Unknown problem', sentence: 'The guide has no problem called "{problem}".' },
  HOST_NOT_FOUND: { status: 404, title: 'No such plant', sentence: 'The guide has no plant of this name.' },
  CALL_NOT_FOUND: { status: 404, title: 'No such call', sentence: 'None of your calls has this link.' },
  TICKET_NOT_FOUND: { status: 404, title: 'No such ticket', sentence: 'There is no ticket with this number.' },
  TICKET_TAKEN: {
    status: 409, title: 'The ticket is taken', sentence: '{who} has this ticket. Nothing was changed.',
  },
  TICKET_SETTLED: {
    status: 409, title: 'The ticket is settled',
    sentence: 'This ticket is settled already. The answer that was given stands; nothing was changed.',
  },
  PHOTO_NOT_FOUND: { status: 404, title: 'No such photo', sentence: 'This case has no photo with this number.' },
  PHOTOS_FULL: {
    status: 409, title: 'No room for more photos',
    sentence: 'A case takes {most} photos at a time. Remove one before you add another; before hand-over you can.',
  },
  PHOTO_NOT_A_PICTURE: {
    status: 415, title: 'Not a photo', sentence: 'This file is not a photo we can open. Send a JPEG, PNG or WebP picture.',
  },
  PHOTO_IN_PHONE_FORMAT: {
    status: 415, title: 'A format we cannot open',
    sentence: 'Your phone saved this photo in a format that we cannot open (HEIC or AVIF). Choose it again from this page on the phone, or set the camera to its most compatible format, or send a screenshot of the photo.',
  },
  PHOTO_BROKEN: {
    status: 422, title: 'The photo is damaged', sentence: 'This photo cannot be read to its end. Send it again, or take a new one.',
  },
  PHOTO_TOO_MANY_PIXELS: {
    status: 422, title: 'The photo is too large',
    sentence: 'This photo has more than 50 million pixels. Send a smaller one, or a part of it.',
  },
  PHOTO_TOO_SLOW: {
    status: 422, title: 'The photo takes too long', sentence: 'This photo takes too long to open. Send a smaller one, or take a new one.',
  },
  PHOTOS_BUSY: {
    status: 429, title: 'Too many photos at once',
    sentence: 'Many photos are coming in at this moment. Wait {seconds} seconds and send it again.',
  },
  PHOTOS_OUT_OF_ORDER: {
    status: 503, title: 'Photos cannot be opened',
    sentence: 'We cannot open photos at this time. Nothing is wrong with yours. Go on without it, and send it again later.',
  },
  PHOTO_REMOVED: { status: 409, title: 'The photo was removed', sentence: 'This photo was removed from the case. Add it anew if it should be there.' },
  PHOTO_HANDED_OVER: {
    status: 409, title: 'The photo is with the specialist',
    sentence: 'The case was handed over, so its photos stay with it. Ask the specialist if one has to go.',
  },
  TICKET_ELSEWHERE: {
    status: 409, title: 'Not in this state', sentence: 'This ticket is {state}{holder}, so {move} now. Nothing was changed.',
  },
  TICKET_MERGED: {
    status: 409, title: 'The ticket is merged', sentence: 'This ticket is merged into ticket {into}. Work on that one, or take them apart first.',
  },
  TICKET_ITSELF: { status: 422, title: 'The same ticket', sentence: 'A ticket cannot be merged or linked with itself.' },
  TICKET_HAS_REPEATS: {
    status: 409, title: 'The ticket has repeats', sentence: 'Other tickets are merged into this one. Merge this one\'s repeats into the other ticket first.',
  },
  UNKNOWN_COLLEAGUE: {
    status: 422, title: 'No such colleague', sentence: 'Nobody called "{name}" works at the bench, so the ticket was not handed on.',
  },
  SAMPLE_KNOWN: {
    status: 409, title: 'The sample is known', sentence: 'This ticket has a sample with the number {number} already.',
  },
  SAMPLE_NOT_FOUND: {
    status: 422, title: 'No such sample', sentence: 'This ticket has no sample with the number {number}.',
  },
  NOT_WATCHED: {
    status: 422, title: 'Not a watch problem',
    sentence: '{problem} is not a watch problem, so its presence is not kept. Choose a problem that must be reported.',
  },
  DAY_TO_COME: { status: 422, title: 'A day to come', sentence: '{day} is still to come. Give today or a day before.' },
  NOTICE_NOT_FOUND: { status: 404, title: 'No such notice', sentence: 'There is no notice with this number.' },
  MAIL_NOT_FOUND: {
    status: 404, title: 'No such letter', sentence: 'No letter with this number waits to be tried again.',
  },
  PRACTICE_NOT_FOUND: {
    status: 404, title: 'No such worked case', sentence: 'The casebook has no worked case of this name.',
  },
  ONLY_PRACTICE: {
    status: 409, title: 'Only practice', sentence: 'This call is only practised, so no ticket was opened.',
  },
  SIGN_IN_FAILED: {
    status: 401, title: 'Not signed in', sentence: 'The name and the password do not go together. Check both and try again.',
  },
  SIGN_IN_PAUSED: {
    status: 429, title: 'Too many failed sign-ins',
    sentence: 'There were too many failed sign-ins. Wait {seconds} seconds and try again.',
  },

  CODE_NEEDED: {
    status: 401, title: 'A one-time code, please', sentence: 'Give the code that your app shows now, or one of your recovery codes.',
  },
  CODE_WRONG: {
    status: 401, title: 'The code does not fit', sentence: 'The code is not the one of this moment, or it was used before. Wait for the next one and try again.',
  },
  CODES_ON: { status: 409, title: 'One-time codes are on', sentence: 'One-time codes are set up already. Stop them before you begin anew.' },
  CODES_OFF: { status: 409, title: 'One-time codes are off', sentence: 'No one-time codes were begun. Begin them first.' },
  PASSWORD_WRONG: { status: 403, title: 'Not the password', sentence: 'This is not your password. Nothing was changed.' },
  PASSWORD_EASY: {
    status: 422, title: 'Too easy a password', sentence: 'This password is too easy to guess, or the one you have. Take a few words that do not belong together.',
  },
  INVITATION_SPENT: {
    status: 404, title: 'The invitation is spent', sentence: 'This invitation was used, withdrawn, or is older than a week. Ask for a new one.',
  },
  NAME_TAKEN: {
    status: 409, title: 'The name is taken', sentence: 'The name "{name}" is taken, was once, or is invited already. Choose another.',
  },
  PERSON_NOT_FOUND: { status: 404, title: 'Nobody of this name', sentence: 'Nobody called "{name}" may sign in or is invited.' },
  LAST_ADMINISTRATOR: {
    status: 409, title: 'The last administrator', sentence: 'This is the only administrator. Make another one first.',
  },

  BODY_DOES_NOT_FIT: {
    status: 400, title: 'The body does not fit', sentence: 'What was sent does not fit. Each fault is listed with its place.',
  },
  QUERY_DOES_NOT_FIT: {
    status: 400, title: 'The address does not fit',
    sentence: 'The part of the address after "?" does not fit. Each fault is listed with its place.',
  },
  BROKEN_JSON: {
    status: 400, title: 'Not JSON', sentence: 'The body cannot be read as a JSON object of plain text. Nothing was changed.',
  },
  UNREADABLE_TEXT: {
    status: 400, title: 'Not UTF-8', sentence: 'The body is not UTF-8, so its words cannot be read. Send it as JSON in UTF-8. Nothing was changed.',
  },
  NOT_JSON: {
    status: 415, title: 'Not JSON',
    sentence: 'Send the body as JSON in UTF-8, uncompressed, with the content type application/json.',
  },
  TOO_LARGE: {
    status: 413, title: 'Too large', sentence: 'What was sent is larger than 64 kB. Shorten it and send it again.',
  },
  FILE_TOO_LARGE: {
    status: 413, title: 'Too large', sentence: 'This file is larger than {most}. Send a smaller one.',
  },
  UPLOAD_KEY_DOES_NOT_FIT: {
    status: 400, title: 'The upload key does not fit',
    sentence: 'The upload key at the end of the address must be 16 to 64 letters, digits, "-" or "_", chosen anew for each photo.',
  },
  BAD_REQUEST: { status: 400, title: 'Bad request', sentence: 'The request cannot be read.' },
  NOT_SIGNED_IN: { status: 401, title: 'Not signed in', sentence: 'Sign in first.' },
  CODES_TO_SET_UP: {
    status: 403, title: 'One-time codes first', sentence: 'Your role needs one-time codes. Set them up first; nothing else can be done until then.',
  },
  NOT_YOUR_ROLE: { status: 403, title: 'Not for this role', sentence: 'Your account is not allowed to do this.' },
  OTHER_ORIGIN: {
    status: 403, title: 'From another page',
    sentence: 'This was sent from another page than the helpline\'s own, so nothing was done.',
  },
  TOO_MANY: {
    status: 429, title: 'Too many requests', sentence: 'Too much came at once. Wait a minute and try again.',
  },
  NO_SUCH_PLACE: { status: 404, title: 'Nothing here', sentence: 'There is nothing at this address.' },
  WRONG_METHOD: {
    status: 405, title: 'Wrong method', sentence: 'This address does not take this method; it takes {methods}.',
  },
  NOT_READY: { status: 503, title: 'Not ready', sentence: 'The store does not answer. Try again in a moment.' },
  UNEXPECTED: {
    status: 500, title: 'Something went wrong',
    sentence: 'Something went wrong on our side. Nothing is lost that was confirmed. Try again; if it stays, quote the request\'s number.',
  },
}
