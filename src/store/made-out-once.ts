import type { Compilable, CompiledQuery, DialectAdapter, Kysely } from 'kysely'
import type { Tables } from './tables.js'

/**
 * A statement that is asked so often that it is made out once for each kind of database: making it out takes longer than
 * SQLite takes to answer it.
 * @param make the statement, with anything in the place of each value
 * @returns asks it; the values stand in the order in which the statement names them
 */
export function madeOutOnce<Row>(make: (db: Kysely<Tables>) => Compilable<Row>): (db: Kysely<Tables>, values: readonly unknown[]) => Promise<Row[]> {
  // A transaction is another Kysely than the store it is of, and has the same adapter.
  const known = new WeakMap<DialectAdapter, CompiledQuery<Row>>()
  return async (db, values) => {
    const { adapter } = db.getExecutor()
    const statement = known.get(adapter) ?? make(db).compile()
    known.set(adapter, statement)
    if (values.length !== statement.parameters.length) {
      throw new Error(`A statement takes ${statement.parameters.length} values and was given ${values.length}: ${statement.sql}`)
    }
    return (await db.executeQuery<Row>({ ...statement, parameters: values })).rows
  }
}
