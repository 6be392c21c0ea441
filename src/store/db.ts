import type { Kysely, Transaction } from 'kysely'
import type { Tables } from './tables.js'

/** A connection or a transaction; repositories take either, so that the caller owns the transaction. */
export type Db = Kysely<Tables> | Transaction<Tables>
