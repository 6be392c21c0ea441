import { join } from 'node:path'
import { Kysely, Migrator } from 'kysely'
import { migrationsFor } from './migrations/index.js'
import { sqliteColumns, sqliteDialect } from './sqlite.js'
import type { Store } from './store.js'
import type { Tables } from './tables.js'

/** Where the store lives. */
export interface StoreSettings {
  /** Folder of the database; made when it is not there. */
  readonly home: string
}

/** Name of the database in its folder. */
export const STORE_FILE = 'frondline.sqlite'

/**
 * Opens the store and brings its tables up to date. Throws when a migration fails; what went before it stays, and
 * the failed one leaves nothing behind.
 */
export async function openStore(settings: StoreSettings): Promise<Store> {
  const db = new Kysely<Tables>({ dialect: sqliteDialect(join(settings.home, STORE_FILE)) })
  try {
    await bringUpToDate(db)
  } catch (fault) {
    await db.destroy()
    throw fault
  }
  return { name: 'SQLite', db, close: () => db.destroy() }
}

async function bringUpToDate(db: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({
    db, provider: { getMigrations: () => Promise.resolve(migrationsFor(sqliteColumns)) },
  })
  const { error, results } = await migrator.migrateToLatest()
  if (error === undefined) return
  const failed = results?.find((result) => result.status === 'Error')?.migrationName ?? 'unknown'
  throw new Error(`The store could not be brought up to date: migration "${failed}" failed.`, { cause: error })
}
