import type { ErrorCode, ErrorRow } from './errors.js'

/** Faults that only the people of the helpline can meet, or whoever writes a program for it: they are told in English. */
export type StaffErrorCode =
  | 'CALL_NOT_FOUND' | 'TICKET_NOT_FOUND' | 'TICKET_TAKEN' | 'TICKET_SETTLED' | 'TICKET_ELSEWHERE' | 'TICKET_MERGED' | 'TICKET_ITSELF'
  | 'TICKET_HAS_REPEATS' | 'UNKNOWN_COLLEAGUE' | 'UNKNOWN_PROBLEM' | 'SAMPLE_KNOWN' | 'SAMPLE_NOT_FOUND' | 'MAIL_NOT_FOUND'
  | 'PRACTICE_NOT_FOUND' | 'ONLY_PRACTICE' | 'SIGN_IN_FAILED' | 'SIGN_IN_PAUSED' | 'CODE_NEEDED' | 'CODE_WRONG' | 'CODES_ON'
  | 'CODES_OFF' | 'CODES_TO_SET_UP' | 'PASSWORD_WRONG' | 'PASSWORD_EASY' | 'INVITATION_SPENT' | 'NAME_TAKEN' | 'PERSON_NOT_FOUND'
  | 'LAST_ADMINISTRATOR' | 'NOT_SIGNED_IN' | 'NOT_YOUR_ROLE' | 'KEY_USED' | 'BROKEN_JSON' | 'NOT_JSON' | 'UPLOAD_KEY_DOES_NOT_FIT'
  | 'QUERY_DOES_NOT_FIT' | 'WRONG_METHOD' | 'NOT_WATCHED' | 'DAY_TO_COME' | 'NOTICE_NOT_FOUND'

/** Faults that an asker can meet. */
export type AskerErrorCode = Exclude<ErrorCode, StaffErrorCode>

/** A fault in the words of one language. */
export type ErrorWords = Pick<ErrorRow, 'title' | 'sentence'>
