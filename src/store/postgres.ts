import {
  type ColumnDefinitionBuilder, CompiledQuery, type DataTypeNode, type Dialect, PostgresDialect, PostgresQueryCompiler,
  type QueryCompiler,
} from 'kysely'
import pg from 'pg'
import type { ColumnKinds } from './migrations/column-kinds.js'

/** How one process uses the server. */
export interface PostgresSettings {
  /** As in DATABASE_URL. */
  readonly url: string
  /** Most connections that this process opens for its queries. */
  readonly connections: number
  /** Told of connections that the server ended while nobody used them; the pool opens others by itself. */
  readonly onLost: (fault: Error) => void
}

/** The dialect for one PostgreSQL database. What is confirmed is on disk, and what is read is what SQLite would give. */
export function postgresDialect({ url, connections, onLost }: PostgresSettings): Dialect {
  const pool = new pg.Pool({ ...connectionConfig(url), max: connections })
  pool.on('error', onLost)
  return new SameMeaningDialect({
    pool,
    async onCreateConnection(connection) {
      for (const setting of SESSION) await connection.executeQuery(CompiledQuery.raw(setting))
    },
  })
}

/** How this database makes the columns that differ between databases. */
export const postgresColumns: ColumnKinds = {
  rowNumber: {
    type: 'integer',
    build: (column: ColumnDefinitionBuilder) => column.generatedByDefaultAsIdentity().primaryKey(),
  },
}

/** What every connection to the server is opened with, those outside the pool too. */
export function connectionConfig(url: string): pg.ClientConfig {
  return {
    connectionString: url, application_name: 'frondline', connectionTimeoutMillis: 10_000, keepAlive: true,
    types: { getTypeParser: (oid, format) => (WHOLE_OR_EXACT.has(oid) ? toNumber : pg.types.getTypeParser(oid, format)) as never },
  }
}

// A server set up for speed may confirm before it has written, and one transaction forgotten open would hold up all.
const SESSION = [
  'set synchronous_commit = on', 'set statement_timeout = \'30s\'', 'set idle_in_transaction_session_timeout = \'60s\'',
]

/** int8 and numeric, which counts and sums have; pg gives them as text, and SQLite as numbers. */
const WHOLE_OR_EXACT: ReadonlySet<number> = new Set([pg.types.builtins.INT8, pg.types.builtins.NUMERIC])

function toNumber(text: string): number {
  const number = Number(text)
  if (Number.isInteger(number) && !Number.isSafeInteger(number)) throw new Error(`The store holds ${text}, too large to be a number here.`)
  return number
}

class SameMeaningDialect extends PostgresDialect {
  override createQueryCompiler(): QueryCompiler {
    return new SameMeaningCompiler()
  }
}

/**
 * Text is ordered and compared by its code points, as in SQLite, whatever the language of the server: else a list by
 * name comes out in another order on another machine. Whole numbers are as wide as SQLite's: else a ticket number with
 * many digits is a fault instead of not found.
 */
class SameMeaningCompiler extends PostgresQueryCompiler {
  protected override visitDataType(node: DataTypeNode): void {
    if (node.dataType === 'integer') this.append('bigint')
    else super.visitDataType(node)
    if (node.dataType === 'text') this.append(' collate "C"')
  }
}
