import type { Database, Statement } from 'better-sqlite3'
import type { SqliteDatabase } from 'kysely'
import { LRUCache } from 'lru-cache'

/** More statements than the service has; lists of several lengths make a few of one. */
const MOST_KEPT = 300

/**
 * An open SQLite file that prepares each statement once and not at every use, which takes longer than most of them run.
 * The statements used longest ago are let go first. Statements are read to their end at once here, so one may serve all.
 */
export function keepingStatements(database: Database): SqliteDatabase {
  const kept = new LRUCache<string, Statement>({ max: MOST_KEPT })
  return {
    close: () => { database.close() },
    prepare(text) {
      const known = kept.get(text)
      const statement = known ?? database.prepare(text)
      if (known === undefined) kept.set(text, statement)
      return statement as ReturnType<SqliteDatabase['prepare']>
    },
  }
}
