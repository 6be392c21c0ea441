import type { EntryEars } from './entries.js'
import type { HostNames } from './hosts.js'
import type { JobEntries } from './job-letters.js'
import type { JobEars } from './jobs.js'
import type { KindEars } from './kinds.js'
import type { ProblemTexts } from './problem-texts.js'
import type { CaseEars } from './worked-cases.js'

/** What place is heard with. */
export interface PlaceEars {
  readonly names: HostNames
  readonly entries: EntryEars
  readonly kinds: KindEars
  readonly jobs: JobEars
  readonly jobEntries: JobEntries
  readonly cases: CaseEars
  readonly texts: ProblemTexts
}
