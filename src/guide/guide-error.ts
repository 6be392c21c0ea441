import type { Place } from './source-file.js'

/**
 * Everything that can be wrong with a guide. A code is never reused for another meaning.
 * Its explanation for authors stands in error-codes.ts.
 */
export type GuideErrorCode =
  | 'YAML' | 'SHAPE' | 'UNKNOWN_KEY' | 'WRONG_FOLDER' | 'NO_REGION' | 'DUPLICATE_NAME' | 'FILE_NAME'
  | 'UNKNOWN_CHECK' | 'UNKNOWN_ANSWER' | 'UNKNOWN_NODE' | 'UNKNOWN_PROBLEM' | 'UNKNOWN_HOST'
  | 'UNKNOWN_RED_FLAG' | 'UNKNOWN_NUMBER' | 'UNKNOWN_DISTRICT' | 'UNKNOWN_WARNING'
  | 'UNANSWERED' | 'CYCLE' | 'UNREACHABLE_NODE' | 'DEAD_END' | 'CONTRADICTS_PROFILE'
  | 'UNKNOWN_WORD_SET' | 'NOT_HEARD_AS_WRITTEN' | 'LAY_WORD_TWICE' | 'PLANT_IS_HOST'
  | 'HEAT_WINDOW'
  | 'NOT_ITS_PROBLEM' | 'PROBLEM_NOT_REACHED' | 'WATCH_WITHOUT_ESCALATION' | 'SHARES_TOO_LARGE' | 'RESERVED_ANSWER'
  | 'NOT_IN_ORIGINAL'

export type GuideWarningCode =
  | 'ALIKE_PROBLEMS' | 'PATH_LENGTH' | 'READING_GRADE' | 'SHADOWED_ENTRY' | 'FEW_CHECKS' | 'OLD_REVIEW' | 'UNUSED_CHECK'
  | 'NOT_TRANSLATED' | 'TRANSLATION_OUT_OF_DATE' | 'READING_EASE'

export interface GuideError {
  readonly severity: 'error' | 'warning'
  readonly code: GuideErrorCode | GuideWarningCode
  /** What is wrong and what was expected, in whole sentences. */
  readonly message: string
  /** Where: the first place is the one to mend; others belong to it (both of two clashing names, each step of a cycle). */
  readonly at: readonly [Place, ...Place[]]
  /** Nearest valid names, best first; empty when there is none near. */
  readonly nearest: readonly string[]
}
