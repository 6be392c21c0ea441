import type { CaseView } from '../../shared/index.js'

/** Why the desk did not do what was asked. Closed; a code is never used again for something else. */
export type DeskFaultCode =
  | 'CASE_NOT_FOUND' | 'STALE_REVISION' | 'CASE_STOPPED' | 'NO_RED_FLAG' | 'CASE_FULL'
  | 'KEY_USED' | 'PLACE_FIRST' | 'NOT_ANSWERED'
  | 'UNKNOWN_HOST' | 'UNKNOWN_NODE' | 'UNKNOWN_CHECK' | 'UNKNOWN_ANSWER' | 'UNKNOWN_DISTRICT' | 'UNKNOWN_PROBLEM'
  | 'HOST_NOT_FOUND' | 'CALL_NOT_FOUND' | 'TICKET_NOT_FOUND' | 'TICKET_TAKEN' | 'TICKET_SETTLED'
  | 'PHOTO_NOT_FOUND' | 'PHOTOS_FULL' | 'PHOTO_NOT_A_PICTURE' | 'PHOTO_IN_PHONE_FORMAT' | 'PHOTO_BROKEN'
  | 'PHOTO_TOO_MANY_PIXELS' | 'PHOTO_TOO_SLOW' | 'PHOTOS_BUSY' | 'PHOTOS_OUT_OF_ORDER' | 'PHOTO_REMOVED' | 'PHOTO_HANDED_OVER'
  | 'TICKET_ELSEWHERE' | 'TICKET_MERGED' | 'TICKET_ITSELF' | 'TICKET_HAS_REPEATS' | 'UNKNOWN_COLLEAGUE'
  | 'SAMPLE_KNOWN' | 'SAMPLE_NOT_FOUND'
  | 'NOT_WATCHED' | 'DAY_TO_COME' | 'NOTICE_NOT_FOUND'
  | 'MAIL_NOT_FOUND' | 'PRACTICE_NOT_FOUND' | 'ONLY_PRACTICE'
  | 'SIGN_IN_FAILED' | 'SIGN_IN_PAUSED' | 'CODE_NEEDED' | 'CODE_WRONG' | 'CODES_ON' | 'CODES_OFF'
  | 'PASSWORD_WRONG' | 'PASSWORD_EASY' | 'INVITATION_SPENT' | 'NAME_TAKEN' | 'PERSON_NOT_FOUND' | 'LAST_ADMINISTRATOR'

/** What a caller may need besides the code. */
export interface DeskFaultFacts {
  /** Words to put into the sentence for people, by name. */
  readonly words?: Readonly<Record<string, string>>
  /** The case as it stands now. */
  readonly case?: CaseView
  readonly retryAfterSeconds?: number
}

/** A refusal by the desk. Nothing was changed. */
export class DeskFault extends Error {
  readonly code: DeskFaultCode
  readonly facts: DeskFaultFacts

  constructor(code: DeskFaultCode, facts: DeskFaultFacts = {}, options?: ErrorOptions) {
    super(code, options)
    this.name = 'DeskFault'
    this.code = code
    this.facts = facts
  }
}
