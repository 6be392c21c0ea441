import type { Kysely, Transaction } from 'kysely'
import type { Tables } from './tables.js'

/** A connection or a transaction; repositories take either, so that the caller owns the transaction. */
export type Db = Kysely<Tables> | Transaction<Tables>

/** An open store. */
export interface Store {
  /** The database's name, for titles and logs. */
  readonly name: 'SQLite' | 'PostgreSQL'
  readonly db: Kysely<Tables>
  /** Closes the database; nothing may be asked of it afterwards. */
  close(): Promise<void>
}
