import { join } from 'node:path'
import { Kysely, Migrator } from 'kysely'
import { withAdvisoryLock } from './advisory-lock.js'
import { withLease } from './lease.js'
import { migrationsFor } from './migrations/index.js'
import type { ColumnKinds } from './migrations/column-kinds.js'
import type { Newsroom } from './news.js'
import { postgresNewsroom } from './postgres-newsroom.js'
import { postgresColumns, postgresDialect, type PostgresSettings } from './postgres.js'
import { RetryingKysely } from './retrying.js'
import { sqliteNewsroom } from './sqlite-newsroom.js'
import { openSqliteFile, sqliteColumns, sqliteDialect } from './sqlite.js'
import type { Store } from './store.js'
import type { Tables } from './tables.js'

/** Where the store lives. */
export interface StoreSettings {
  /** Folder of the SQLite database; made when it is not there. */
  readonly home: string
  /** The PostgreSQL database to use instead; none when left out. */
  readonly databaseUrl?: string | null
  /** Most connections to PostgreSQL that this process opens for its queries. */
  readonly connections?: number
  /** Told of connections to PostgreSQL that were lost while nobody used them. */
  readonly onLost?: (fault: Error) => void
}

/** Name of the SQLite database in its folder. */
export const STORE_FILE = 'frondline.sqlite'

/**
 * Opens the store and brings its tables up to date. Throws when a migration fails; what went before it stays, and
 * the failed one leaves nothing behind. Several processes may open one PostgreSQL database at once.
 */
export async function openStore({ home, databaseUrl, connections = 10, onLost = () => undefined }: StoreSettings): Promise<Store> {
  return databaseUrl == null ? openSqlite(home) : openPostgres({ url: databaseUrl, connections, onLost })
}

async function openSqlite(home: string): Promise<Store> {
  const file = join(home, STORE_FILE)
  await bringUpToDate(new Kysely({ dialect: sqliteDialect(openSqliteFile(file)) }), sqliteColumns)
  const database = openSqliteFile(file)
  const newsroom = sqliteNewsroom(database)
  const db = new Kysely<Tables>({ dialect: sqliteDialect(database, newsroom) })
  return {
    name: 'SQLite', db, listen: newsroom.listen,
    exclusively: (name, work) => withLease(db, name, work),
    async close() {
      await closeBoth(newsroom, db)
      // Kysely leaves it open when nothing was ever asked of it.
      database.close()
    },
  }
}

async function openPostgres(server: PostgresSettings): Promise<Store> {
  // Apart from the rest, because a serialisable transaction would look before it has waited for its turn.
  await bringUpToDate(new Kysely({ dialect: postgresDialect({ ...server, connections: 2 }) }), postgresColumns)
  const db = new RetryingKysely({ dialect: postgresDialect(server) })
  const newsroom = postgresNewsroom(server.url, server.onLost)
  return {
    name: 'PostgreSQL', db, listen: newsroom.listen,
    exclusively: (name, work) => withAdvisoryLock(db, name, work),
    close: () => closeBoth(newsroom, db),
  }
}

async function closeBoth(newsroom: Newsroom, db: Kysely<Tables>): Promise<void> {
  await newsroom.close()
  await db.destroy()
}

async function bringUpToDate(db: Kysely<Tables>, kinds: ColumnKinds): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: () => Promise.resolve(migrationsFor(kinds)) } })
  try {
    const { error, results } = await migrator.migrateToLatest()
    if (error === undefined) return
    const failed = results?.find((result) => result.status === 'Error')?.migrationName
    if (failed === undefined) throw error
    throw new Error(`The store could not be brought up to date: migration "${failed}" failed.`, { cause: error })
  } finally {
    await db.destroy()
  }
}
