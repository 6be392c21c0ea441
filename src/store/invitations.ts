import type { Selectable } from 'kysely'
import type { Db } from './store.js'
import type { InvitationTable } from './tables.js'

type InvitationRow = Selectable<InvitationTable>

/** Keeps a new invitation. */
export async function insertInvitation(db: Db, row: InvitationRow): Promise<void> {
  await db.insertInto('invitation').values(row).execute()
}

/** The invitation behind a token's hash that can still be used at `now`, or undefined. */
export function openInvitation(db: Db, tokenHash: string, now: string): Promise<InvitationRow | undefined> {
  return db.selectFrom('invitation').selectAll()
    .where('token_hash', '=', tokenHash).where('spent_at', 'is', null).where('expires_at', '>', now).executeTakeFirst()
}

/** Every invitation that can still be used at `now`, the newest first, with the name of who made it. */
export function openInvitations(db: Db, now: string): Promise<(InvitationRow & { by: string })[]> {
  return db.selectFrom('invitation').innerJoin('person', 'person.id', 'invitation.made_by')
    .selectAll('invitation').select('person.name as by')
    .where('spent_at', 'is', null).where('expires_at', '>', now)
    .orderBy('invitation.made_at', 'desc').orderBy('invitation.name').execute()
}

/** Uses an invitation up. False when it was used already; then nothing is changed. */
export async function spendInvitation(db: Db, tokenHash: string, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('invitation').set({ spent_at: at })
    .where('token_hash', '=', tokenHash).where('spent_at', 'is', null).executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Withdraws every open invitation to a name. False when there was none. */
export async function withdrawInvitations(db: Db, name: string, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('invitation').set({ spent_at: at })
    .where('name', '=', name).where('spent_at', 'is', null).executeTakeFirstOrThrow()
  return numUpdatedRows > 0n
}
