import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { ContactReadTable, ContactSealedTable, ContactTable } from './tables.js'

export type ContactRow = Selectable<ContactSealedTable>

/** Keeps how the asker can be reached about a ticket, or how it is sealed from now on. */
export async function keepContact(db: Db, row: ContactRow): Promise<void> {
  const { ticket_id: _, ...sealed } = row
  await db.insertInto('contact_sealed').values(row)
    .onConflict((conflict) => conflict.column('ticket_id').doUpdateSet(sealed)).execute()
}

/** How the asker of a ticket can be reached, or undefined when it was not given or is erased. */
export function contactOf(db: Db, ticketId: number): Promise<ContactRow | undefined> {
  return db.selectFrom('contact_sealed').selectAll().where('ticket_id', '=', ticketId).executeTakeFirst()
}

/** Every contact kept. */
export function allContacts(db: Db): Promise<ContactRow[]> {
  return db.selectFrom('contact_sealed').selectAll().orderBy('ticket_id').execute()
}

/** Erases how the asker of a ticket can be reached. False when there was nothing. */
export async function eraseContact(db: Db, ticketId: number): Promise<boolean> {
  const { numDeletedRows } = await db.deleteFrom('contact_sealed').where('ticket_id', '=', ticketId).executeTakeFirstOrThrow()
  return numDeletedRows > 0n
}

/** The tickets whose contact is to be erased: settled before this time, or merged into one that was. */
export async function contactsSettledBefore(db: Db, before: string): Promise<number[]> {
  const rows = await db.selectFrom('contact_sealed')
    .innerJoin('ticket', 'ticket.id', 'contact_sealed.ticket_id')
    .leftJoin('ticket as whole', 'whole.id', 'ticket.merged_into')
    .select('contact_sealed.ticket_id')
    .where((eb) => eb.or([
      eb.and([eb('ticket.state', '=', 'settled'), eb('ticket.settled_at', '<', before)]),
      eb.and([eb('whole.state', '=', 'settled'), eb('whole.settled_at', '<', before)]),
    ]))
    .execute()
  return rows.map(({ ticket_id }) => ticket_id)
}

/** Other tickets left with one of these marks. */
export async function ticketsWithMark(db: Db, contact: ContactRow): Promise<number[]> {
  const { ticket_id: ticketId, email_mark: email, phone_mark: phone } = contact
  if (email === null && phone === null) return []
  const rows = await db.selectFrom('contact_sealed').select('ticket_id').where('ticket_id', '!=', ticketId)
    .where((eb) => eb.or([
      ...(email === null ? [] : [eb('email_mark', '=', email)]), ...(phone === null ? [] : [eb('phone_mark', '=', phone)]),
    ]))
    .execute()
  return rows.map(({ ticket_id }) => ticket_id)
}

/** Writes down that somebody has read contact details. */
export async function appendContactRead(db: Db, row: Insertable<ContactReadTable>): Promise<void> {
  await db.insertInto('contact_read').values(row).execute()
}

/** Who has read the contact details of a ticket, first one first. */
export function contactReadsOf(db: Db, ticketId: number): Promise<{ by: string; at: string }[]> {
  return db.selectFrom('contact_read').innerJoin('person', 'person.id', 'contact_read.person_id')
    .select(['person.name as by', 'contact_read.at as at'])
    .where('contact_read.ticket_id', '=', ticketId).orderBy('contact_read.id').execute()
}

/** Contacts from before they were sealed. */
export function unsealedContacts(db: Db): Promise<Selectable<ContactTable>[]> {
  return db.selectFrom('contact').selectAll().execute()
}

/** Removes a contact from before it was sealed. */
export async function removeUnsealedContact(db: Db, ticketId: number): Promise<void> {
  await db.deleteFrom('contact').where('ticket_id', '=', ticketId).execute()
}
