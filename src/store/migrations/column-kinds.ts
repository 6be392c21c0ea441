import type { ColumnDefinitionBuilder, sql } from 'kysely'

type RawType = ReturnType<typeof sql>

/** Columns that each database makes in its own way. */
export interface ColumnKinds {
  /** A primary key that counts up by itself and never gives a number twice. */
  readonly rowNumber: {
    readonly type: 'integer' | 'bigint' | RawType
    build(column: ColumnDefinitionBuilder): ColumnDefinitionBuilder
  }
}
