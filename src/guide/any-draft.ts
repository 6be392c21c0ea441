import type { CasebookDraft, CheckDraft, HostDraft, LayWordsDraft, ProblemDraft, RedFlagDraft, RegionDraft, WordSetsDraft } from './drafts.js'
import type { LanguageWordsDraft, TranslationDraft } from './translation/translation-draft.js'

/** What one file of the guide may turn out to be. */
export type AnyDraft =
  | CheckDraft | ProblemDraft | HostDraft | RedFlagDraft | RegionDraft | LayWordsDraft | WordSetsDraft | CasebookDraft
  | TranslationDraft | LanguageWordsDraft
