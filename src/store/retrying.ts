import { Kysely, type Transaction, type TransactionBuilder } from 'kysely'
import type { Tables } from './tables.js'

/** How often a transaction that stood in another's way is tried before its fault is let through. */
const MOST_TRIES = 12
const FIRST_WAIT_MS = 4
const LONGEST_WAIT_MS = 400

/** SQLSTATE of transactions that the server ended for another's sake: they may simply be done again. */
const DONE_AGAIN: ReadonlySet<string> = new Set(['40001', '40P01'])

/**
 * A database with many writers that behaves as one with a single writer: every transaction is serialisable, and one
 * that the server breaks off, because another was first, is done again from its beginning. So the work of a
 * transaction may run more than once, and must do nothing but read, reckon and write rows.
 */
export class RetryingKysely extends Kysely<Tables> {
  override transaction(): TransactionBuilder<Tables> {
    const builder = super.transaction().setIsolationLevel('serializable')
    const runOnce = builder.execute.bind(builder)
    builder.execute = <Result>(work: (trx: Transaction<Tables>) => Promise<Result>) => (
      retrying(() => runOnce(work)))
    return builder
  }
}

async function retrying<Result>(run: () => Promise<Result>): Promise<Result> {
  for (let tries = 1; ; tries++) {
    try {
      return await run()
    } catch (fault) {
      if (tries >= MOST_TRIES || !DONE_AGAIN.has(sqlState(fault))) throw fault
    }
    // Of unequal length, or two that met would meet again.
    const longest = Math.min(FIRST_WAIT_MS * 2 ** tries, LONGEST_WAIT_MS)
    await new Promise((resolve) => setTimeout(resolve, Math.random() * longest))
  }
}

function sqlState(fault: unknown): string {
  return fault instanceof Error && 'code' in fault && typeof fault.code === 'string' ? fault.code : ''
}
