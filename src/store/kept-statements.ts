import type { Database, Statement } from 'better-sqlite3'
import type { SqliteDatabase } from 'kysely'

/** More statements than the service has; lists of several lengths make a few of one. */
const MOST_KEPT = 300

/**
 * An open SQLite file that prepares each statement once and not at every use, which takes longer than most of them run.
 * The statements used longest ago are let go first. Statements are read to their end at once here, so one may serve all.
 */
export function keepingStatements(database: Database): SqliteDatabase {
  const kept = new Map<string, Statement>()
  return {
    close: () => { database.close() },
    prepare(text) {
      const statement = kept.get(text) ?? database.prepare(text)
      // Behind all others, as the last one used.
      kept.delete(text)
      kept.set(text, statement)
      const [oldest] = kept.keys()
      if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
      return statement as ReturnType<SqliteDatabase['prepare']>
    },
  }
}
