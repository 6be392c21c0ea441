import type { Kysely } from 'kysely'
import type { News } from './news.js'
import type { Tables } from './tables.js'

export type { Db } from './db.js'

/** An open store. */
export interface Store {
  /** The database's name, for titles and logs. */
  readonly name: 'SQLite' | 'PostgreSQL'
  readonly db: Kysely<Tables>
  /** Calls `hear` for each piece of news from now on, whichever process announced it; the result ends it. */
  readonly listen: (hear: (news: News) => void) => () => void
  /** Does the work unless another process is at work of this name; false, and nothing done, when one is. */
  readonly exclusively: (name: string, work: () => Promise<void>) => Promise<boolean>
  /** Closes the database; nothing may be asked of it afterwards. */
  close(): Promise<void>
}
