import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { CodeSecretTable } from './tables.js'

type CodeSecretRow = Selectable<CodeSecretTable>

/** Keeps the secret of a person's one-time codes in place of any before. */
export async function keepCodeSecret(db: Db, row: Insertable<CodeSecretTable>): Promise<void> {
  const { person_id: _, ...secret } = row
  await db.insertInto('code_secret').values(row)
    .onConflict((conflict) => conflict.column('person_id').doUpdateSet(secret)).execute()
}

/** The secret of a person's one-time codes, confirmed or not, or undefined. */
export function codeSecretOf(db: Db, personId: number): Promise<CodeSecretRow | undefined> {
  return db.selectFrom('code_secret').selectAll().where('person_id', '=', personId).executeTakeFirst()
}

/** The secret of everyone's one-time codes, confirmed or not. */
export function allCodeSecrets(db: Db): Promise<CodeSecretRow[]> {
  return db.selectFrom('code_secret').selectAll().orderBy('person_id').execute()
}

/** The people whose one-time codes are confirmed. */
export async function peopleWithCodes(db: Db): Promise<number[]> {
  const rows = await db.selectFrom('code_secret').select('person_id').where('confirmed_at', 'is not', null).execute()
  return rows.map(({ person_id }) => person_id)
}

/** Notes that the code of a time step was taken. False when it, or a later one, was taken before: then it is refused. */
export async function takeStep(db: Db, personId: number, step: number): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('code_secret').set({ last_step: step })
    .where('person_id', '=', personId).where('last_step', '<', step).executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Notes that a person has shown that their app gives the right codes. */
export async function confirmCodeSecret(db: Db, personId: number, at: string): Promise<void> {
  await db.updateTable('code_secret').set({ confirmed_at: at }).where('person_id', '=', personId).execute()
}

/** Forgets a person's one-time codes and recovery codes. */
export async function deleteCodes(db: Db, personId: number): Promise<void> {
  await db.deleteFrom('recovery_code').where('person_id', '=', personId).execute()
  await db.deleteFrom('code_secret').where('person_id', '=', personId).execute()
}

/** Keeps new recovery codes, by their hashes, in place of any before. */
export async function keepRecoveryCodes(db: Db, personId: number, hashes: readonly string[]): Promise<void> {
  await db.deleteFrom('recovery_code').where('person_id', '=', personId).execute()
  await db.insertInto('recovery_code').values(hashes.map((hash) => ({ code_hash: hash, person_id: personId, used_at: null }))).execute()
}

/** Uses a recovery code up. False when the person has no such code, or it was used before. */
export async function spendRecoveryCode(db: Db, personId: number, hash: string, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('recovery_code').set({ used_at: at })
    .where('person_id', '=', personId).where('code_hash', '=', hash).where('used_at', 'is', null).executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** How many recovery codes a person has not used yet. */
export async function recoveryCodesLeft(db: Db, personId: number): Promise<number> {
  const row = await db.selectFrom('recovery_code').select((eb) => eb.fn.countAll().as('count'))
    .where('person_id', '=', personId).where('used_at', 'is', null).executeTakeFirstOrThrow()
  return Number(row.count)
}
