import { dropSpentInvitations, sealLettersAnew } from '../mail/invitation.js'
import { sealSecretsAnew } from '../people/codes.js'
import type { Room } from '../room.js'
import { sealContactsAnew } from './contacts.js'

/**
 * Seals with the key of today everything that lies open from before there was a key or that an older key sealed, so that
 * a key taken out of use can be thrown away after one start: contact details, the secrets of one-time codes, and letters
 * that wait. All of it or nothing. Throws when something is sealed with a key that is not on the ring any more.
 */
export async function sealAnew({ db, keys, now }: Pick<Room, 'db' | 'keys' | 'now'>): Promise<void> {
  await db.transaction().execute(async (trx) => {
    // First, or a letter that nobody can use any more could need a key that is long gone.
    await dropSpentInvitations(trx, now().toISOString())
    await sealContactsAnew(keys, trx)
    await sealSecretsAnew(keys, trx)
    await sealLettersAnew(keys, trx)
  })
}
