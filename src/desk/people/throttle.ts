import { createHash } from 'node:crypto'
import type { Kysely } from 'kysely'
import { forgetSignInAttempt, forgetSignInAttemptsBefore, keepSignInAttempt, signInAttempt } from '../../store/index.js'
import type { Db, Tables } from '../../store/index.js'

/** Failures that are let pass without a wait. */
export const FREE_FAILURES = 5
const FIRST_WAIT_MS = 15_000
const LONGEST_WAIT_MS = 15 * 60_000
/** A key with no attempt for this long starts again from nothing. */
const FORGET_AFTER_MS = 24 * 60 * 60_000

/** Where the attempts are counted: under the name tried and under the address it came from. */
export interface AttemptFrom {
  readonly name: string
  readonly address: string
}

/**
 * The wait after so many failures, in milliseconds: none up to four, 15 seconds after the fifth, twice as long after
 * each further one, never more than 15 minutes.
 */
export function waitAfter(failures: number): number {
  if (failures < FREE_FAILURES) return 0
  return Math.min(FIRST_WAIT_MS * 2 ** Math.min(failures - FREE_FAILURES, 20), LONGEST_WAIT_MS)
}

/**
 * Counts an attempt as failed before the password is looked at, so that many at once cannot all slip through; a
 * success takes it back with `clearAttempt`. Returns the milliseconds still to wait; above 0 the attempt is not allowed and
 * nothing is counted.
 */
export async function claimAttempt(db: Kysely<Tables>, from: AttemptFrom, now: Date): Promise<number> {
  return db.transaction().execute(async (trx) => {
    await forgetSignInAttemptsBefore(trx, new Date(now.getTime() - FORGET_AFTER_MS).toISOString())
    const keys = [nameKey(from), addressKey(from)]
    const kept = await Promise.all(keys.map((key) => signInAttempt(trx, key)))
    const waits = kept.map((row) => (row?.blocked_until == null ? 0 : Date.parse(row.blocked_until) - now.getTime()))
    const wait = Math.max(0, ...waits)
    if (wait > 0) return wait
    for (const [at, key] of keys.entries()) await countFailure(trx, key, (kept[at]?.failures ?? 0) + 1, now)
    return 0
  })
}

/**
 * Takes back what `claimAttempt` counted, after a success. The name starts again from nothing; the address only
 * loses this one, or one good account would let an address try others without end.
 */
export async function clearAttempt(db: Kysely<Tables>, from: AttemptFrom, now: Date): Promise<void> {
  await db.transaction().execute(async (trx) => {
    await forgetSignInAttempt(trx, nameKey(from))
    const key = addressKey(from)
    const failures = ((await signInAttempt(trx, key))?.failures ?? 1) - 1
    if (failures > 0) await countFailure(trx, key, failures, now)
    else await forgetSignInAttempt(trx, key)
  })
}

async function countFailure(db: Db, key: string, failures: number, now: Date): Promise<void> {
  const wait = waitAfter(failures)
  await keepSignInAttempt(db, {
    attempt_key: key, failures, last_at: now.toISOString(),
    blocked_until: wait === 0 ? null : new Date(now.getTime() + wait).toISOString(),
  })
}

// Hashed, so that the table does not say in clear who tried what from where.
const nameKey = ({ name }: AttemptFrom): string => digest(`name:${name}`)
const addressKey = ({ address }: AttemptFrom): string => digest(`address:${address}`)

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}
