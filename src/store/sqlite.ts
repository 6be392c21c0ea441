import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import {
  type ColumnDefinitionBuilder, type Dialect, type DialectAdapter, type Driver, type QueryCompiler, type SelectModifierNode,
  SqliteAdapter, SqliteDialect, SqliteQueryCompiler,
} from 'kysely'
import { type Ending, GroupingDriver } from './group-commit.js'
import { keepingStatements } from './kept-statements.js'
import type { ColumnKinds } from './migrations/column-kinds.js'

/** How long one process waits for another's write to end, in milliseconds. */
const BUSY_MS = 5000

/** The dialect on an open SQLite file. */
export function sqliteDialect(database: Database.Database, ending: Ending = UNTOLD): Dialect {
  return new GroupingDialect(database, ending)
}

const UNTOLD: Ending = { done: () => undefined, undone: () => undefined, committed: () => undefined, lost: () => undefined }

/** How this database makes the columns that differ between databases. */
export const sqliteColumns: ColumnKinds = {
  rowNumber: { type: 'integer', build: (column: ColumnDefinitionBuilder) => column.primaryKey().autoIncrement() },
}

/**
 * Opens one SQLite file. Makes it and its folder when they are not there. A write that was confirmed survives a loss of
 * power: the log is flushed at every commit.
 */
export function openSqliteFile(file: string): Database.Database {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  const database = new Database(file, { timeout: BUSY_MS })
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  database.pragma('foreign_keys = ON')
  database.pragma(`busy_timeout = ${BUSY_MS}`)
  // What an asker has erased must not stay readable in free pages of the file.
  database.pragma('secure_delete = ON')
  // As PostgreSQL has it: a search that is to overlook capitals folds both sides with lower().
  database.pragma('case_sensitive_like = ON')
  return database
}

/** SQLite can undo the making of a table, so a migration that fails leaves nothing behind. */
class UndoingAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}

/**
 * A transaction has the whole file to itself, so locking rows (`forUpdate`, `skipLocked`) means nothing here and is left
 * out; repositories may ask for it for the sake of databases with more than one writer.
 */
class LocklessCompiler extends SqliteQueryCompiler {
  protected override visitSelectModifier(node: SelectModifierNode): void {
    if (node.modifier === 'Distinct' || node.modifier === undefined) super.visitSelectModifier(node)
  }
}

class GroupingDialect extends SqliteDialect {
  readonly #database: Database.Database
  readonly #ending: Ending

  constructor(database: Database.Database, ending: Ending) {
    super({ database })
    this.#database = database
    this.#ending = ending
  }

  override createDriver(): Driver {
    return new GroupingDriver(this.#database, keepingStatements(this.#database), this.#ending)
  }

  override createAdapter(): DialectAdapter {
    return new UndoingAdapter()
  }

  override createQueryCompiler(): QueryCompiler {
    return new LocklessCompiler()
  }
}
