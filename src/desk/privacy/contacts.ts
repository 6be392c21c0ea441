import { Contact } from '../../../shared/index.js'
import {
  allContacts, type ContactRow, type Db, keepContact, removeUnsealedContact, unsealedContacts,
} from '../../store/index.js'
import type { Room } from '../room.js'
import type { KeyRing } from './key-ring.js'

/** Keeps how an asker can be reached, sealed. Nothing is kept when nothing was given. */
export async function keepSealed(keys: KeyRing, db: Db, ticketId: number, contact: Contact | undefined): Promise<void> {
  const given = withoutBlanks(contact ?? {})
  if (Object.keys(given).length > 0) await keepContact(db, sealedRow(keys, ticketId, given))
}

/** How an asker can be reached, in clear. */
export function openContact(keys: KeyRing, row: ContactRow): Contact {
  return Contact.parse(JSON.parse(keys.open(placeOf(row.ticket_id), row.sealed)))
}

/**
 * Seals what lies open from before there was a key, and seals anew what an older key sealed, so that a key taken out of
 * use can be thrown away after one start.
 */
export async function sealAnew({ db, keys }: Pick<Room, 'db' | 'keys'>): Promise<void> {
  await db.transaction().execute(async (trx) => {
    for (const { ticket_id: ticketId, name, email, phone } of await unsealedContacts(trx)) {
      await keepSealed(keys, trx, ticketId, {
        ...(name === null ? {} : { name }), ...(email === null ? {} : { email }), ...(phone === null ? {} : { phone }),
      })
      await removeUnsealedContact(trx, ticketId)
    }
    for (const row of await allContacts(trx)) {
      if (!keys.isCurrent(row.sealed)) await keepContact(trx, sealedRow(keys, row.ticket_id, openContact(keys, row)))
    }
  })
}

function sealedRow(keys: KeyRing, ticketId: number, contact: Contact): ContactRow {
  const email = contact.email?.toLowerCase()
  const phone = contact.phone?.replaceAll(/[^0-9+]/g, '')
  return {
    ticket_id: ticketId, sealed: keys.seal(placeOf(ticketId), JSON.stringify(contact)),
    email_mark: email === undefined ? null : keys.mark(`email:${email}`),
    phone_mark: phone === undefined || phone === '' ? null : keys.mark(`phone:${phone}`),
  }
}

function placeOf(ticketId: number): string {
  return `contact of ticket ${ticketId}`
}

function withoutBlanks({ name, email, phone }: Contact): Contact {
  const given = (text: string | undefined): text is string => text !== undefined && text !== ''
  return { ...(given(name) ? { name } : {}), ...(given(email) ? { email } : {}), ...(given(phone) ? { phone } : {}) }
}
