import type { Db } from './store.js'

/** Notes that two tickets have to do with each other. False when that was noted already. */
export async function relateTickets(db: Db, one: number, other: number): Promise<boolean> {
  const { numInsertedOrUpdatedRows } = await db.insertInto('ticket_relation').values(inOrder(one, other))
    .onConflict((conflict) => conflict.columns(['one_id', 'other_id']).doNothing()).executeTakeFirstOrThrow()
  return numInsertedOrUpdatedRows === 1n
}

/** Takes a relation back. False when there was none. */
export async function unrelateTickets(db: Db, one: number, other: number): Promise<boolean> {
  const pair = inOrder(one, other)
  const { numDeletedRows } = await db.deleteFrom('ticket_relation')
    .where('one_id', '=', pair.one_id).where('other_id', '=', pair.other_id).executeTakeFirstOrThrow()
  return numDeletedRows === 1n
}

/** The numbers of the tickets related to one. */
export async function relatedTo(db: Db, id: number): Promise<number[]> {
  const rows = await db.selectFrom('ticket_relation').selectAll()
    .where((eb) => eb.or([eb('one_id', '=', id), eb('other_id', '=', id)])).execute()
  return rows.map(({ one_id, other_id }) => (one_id === id ? other_id : one_id))
}

function inOrder(one: number, other: number) {
  return { one_id: Math.min(one, other), other_id: Math.max(one, other) }
}
