import { contactOf, type Db } from '../../store/index.js'
import { openContact } from '../privacy/contacts.js'
import type { Room } from '../room.js'

/**
 * The mail address that an asker left with a ticket, or null when none was left or it is erased. For writing to them
 * only: a person who wants to see it asks by `readContact`, which writes that down.
 */
export async function askerAddress({ keys }: Pick<Room, 'keys'>, db: Db, ticketId: number): Promise<string | null> {
  const row = await contactOf(db, ticketId)
  return row === undefined ? null : openContact(keys, row).email ?? null
}
