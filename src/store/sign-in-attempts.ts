import type { Db } from './store.js'
import type { SignInAttemptTable } from './tables.js'

/** What is known of failed sign-ins under this key, or undefined. */
export function signInAttempt(db: Db, key: string): Promise<SignInAttemptTable | undefined> {
  return db.selectFrom('sign_in_attempt').selectAll().where('attempt_key', '=', key).executeTakeFirst()
}

/** Writes what is known of failed sign-ins under a key. */
export async function keepSignInAttempt(db: Db, row: SignInAttemptTable): Promise<void> {
  await db.insertInto('sign_in_attempt').values(row)
    .onConflict((conflict) => conflict.column('attempt_key').doUpdateSet({
      failures: row.failures, last_at: row.last_at, blocked_until: row.blocked_until,
    }))
    .execute()
}

/** Forgets the failed sign-ins under a key. */
export async function forgetSignInAttempt(db: Db, key: string): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('attempt_key', '=', key).execute()
}

/** Forgets the failed sign-ins whose last one was before this time. */
export async function forgetSignInAttemptsBefore(db: Db, before: string): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('last_at', '<', before).execute()
}
