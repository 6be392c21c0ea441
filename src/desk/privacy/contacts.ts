import { Contact, givenContact } from '../../../shared/index.js'
import {
  allContacts, type ContactRow, type Db, keepContact, removeUnsealedContact, unsealedContacts,
} from '../../store/index.js'
import type { KeyRing } from './key-ring.js'

/** Keeps how an asker can be reached, sealed. Nothing is kept when nothing was given. */
export async function keepSealed(keys: KeyRing, db: Db, ticketId: number, contact: Contact | undefined): Promise<void> {
  const given = givenContact(contact ?? {})
  if (given !== null) await keepContact(db, sealedRow(keys, ticketId, given))
}

/** How an asker can be reached, in clear. */
export function openContact(keys: KeyRing, row: ContactRow): Contact {
  return Contact.parse(JSON.parse(keys.open(placeOf(row.ticket_id), row.sealed)))
}

/**
 * Seals contacts that lie open from before there was a key, and those that an older key sealed or marked. All marks come
 * from one key, or an asker who asks again after a change of keys would be a stranger.
 */
export async function sealContactsAnew(keys: KeyRing, db: Db): Promise<void> {
  for (const { ticket_id: ticketId, name, email, phone } of await unsealedContacts(db)) {
    await keepSealed(keys, db, ticketId, {
      ...(name === null ? {} : { name }), ...(email === null ? {} : { email }), ...(phone === null ? {} : { phone }),
    })
    await removeUnsealedContact(db, ticketId)
  }
  for (const row of await allContacts(db)) {
    const anew = sealedRow(keys, row.ticket_id, openContact(keys, row))
    const isMarked = row.email_mark === anew.email_mark && row.phone_mark === anew.phone_mark
    if (!keys.isCurrent(row.sealed) || !isMarked) await keepContact(db, anew)
  }
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
