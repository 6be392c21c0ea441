import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { OutboxTable } from './tables.js'

export type OutboxRow = Selectable<OutboxTable>

/** Puts a letter into the outbox, unless one with the same key was ever put there. */
export async function insertMail(db: Db, row: Insertable<OutboxTable>): Promise<void> {
  await db.insertInto('outbox').values(row).onConflict((conflict) => conflict.column('mail_key').doNothing()).execute()
}

/**
 * Claims the letter whose turn it is, or undefined when none is due. It is nobody else's until `until`; should the
 * claimer not come back, it is due again then. Call it in a transaction.
 */
export async function claimMail(db: Db, now: string, until: string, claim: string): Promise<OutboxRow | undefined> {
  const due = await db.selectFrom('outbox').selectAll()
    .where('state', '=', 'waiting').where('next_at', '<=', now)
    .orderBy('next_at').orderBy('id').limit(1)
    .forUpdate().skipLocked()
    .executeTakeFirst()
  if (due === undefined) return undefined
  await db.updateTable('outbox').set({ next_at: until, claim, tries: due.tries + 1 }).where('id', '=', due.id).execute()
  return { ...due, next_at: until, claim, tries: due.tries + 1 }
}

/** When the next waiting letter is due, or undefined when none waits. */
export async function nextMailAt(db: Db): Promise<string | undefined> {
  const row = await db.selectFrom('outbox').select('next_at').where('state', '=', 'waiting')
    .orderBy('next_at').limit(1).executeTakeFirst()
  return row?.next_at
}

/** Notes that the server has taken a letter: that holds whoever has the claim by now. What was sealed in it is forgotten. */
export async function markMailSent(db: Db, id: number, at: string): Promise<void> {
  await db.updateTable('outbox').set({ state: 'sent', ended_at: at, claim: null, why: null, sealed: null })
    .where('id', '=', id).execute()
}

/**
 * Notes that a claimed letter is not tried any more. What was sealed in it is forgotten, but kept with a stuck one, which
 * somebody may let be tried again. Nothing happens when the claim is no longer this one: another is at it.
 */
export async function giveUpMail(
  db: Db, id: number, claim: string, state: 'stuck' | 'dropped', at: string, why: string | null,
): Promise<void> {
  await db.updateTable('outbox')
    .set({ state, ended_at: at, claim: null, why, ...(state === 'stuck' ? {} : { sealed: null }) })
    .where('id', '=', id).where('claim', '=', claim).where('state', '=', 'waiting')
    .execute()
}

/** Gives a claimed letter back, to be tried again later. Nothing happens when the claim is no longer this one. */
export async function postponeMail(db: Db, id: number, claim: string, nextAt: string, why: string): Promise<void> {
  await db.updateTable('outbox').set({ next_at: nextAt, claim: null, why })
    .where('id', '=', id).where('claim', '=', claim).where('state', '=', 'waiting')
    .execute()
}

/** Lets a stuck letter, or one that waits after a try in vain, be tried at once. False when it is neither. */
export async function retryMail(db: Db, id: number, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('outbox')
    .set({ state: 'waiting', next_at: at, trying_since: at, ended_at: null })
    .where('id', '=', id).where('state', 'in', ['waiting', 'stuck']).where('claim', 'is', null)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Letters that somebody should look at: the stuck ones, then those that wait after a try in vain, oldest first. */
export function troubledMail(db: Db, most: number): Promise<OutboxRow[]> {
  return db.selectFrom('outbox').selectAll()
    .where((is) => is.or([is('state', '=', 'stuck'), is.and([is('state', '=', 'waiting'), is('why', 'is not', null)])]))
    .orderBy('state').orderBy('made_at').orderBy('id').limit(most)
    .execute()
}

/** How many letters wait. */
export async function countWaitingMail(db: Db): Promise<number> {
  const row = await db.selectFrom('outbox').select((is) => is.fn.countAll().as('count')).where('state', '=', 'waiting')
    .executeTakeFirstOrThrow()
  return Number(row.count)
}

/** Letters with something sealed in them: they wait, or are stuck and may be tried again. */
export async function sealedMail(db: Db): Promise<(OutboxRow & { readonly sealed: string })[]> {
  const rows = await db.selectFrom('outbox').selectAll().where('sealed', 'is not', null).orderBy('id').execute()
  return rows.flatMap((row) => (row.sealed === null ? [] : [{ ...row, sealed: row.sealed }]))
}

/** Keeps what is sealed in a letter, sealed anew. */
export async function keepMailSealed(db: Db, id: number, sealed: string): Promise<void> {
  await db.updateTable('outbox').set({ sealed }).where('id', '=', id).execute()
}

/** Drops a letter that waits or is stuck, and forgets what is sealed in it and what was said of it. */
export async function dropMail(db: Db, id: number, at: string): Promise<void> {
  await db.updateTable('outbox').set({ state: 'dropped', ended_at: at, claim: null, why: null, sealed: null })
    .where('id', '=', id).where('state', 'in', ['waiting', 'stuck']).execute()
}

/** Forgets letters that ended well before this time. */
export async function forgetMailBefore(db: Db, before: string): Promise<void> {
  await db.deleteFrom('outbox').where('state', 'in', ['sent', 'dropped']).where('ended_at', '<', before).execute()
}
