import { z } from 'zod'
import { Role } from '../../../shared/index.js'
import { type Db, dropMail, keepMailSealed, openInvitation, sealedMail } from '../../store/index.js'
import type { KeyRing } from '../privacy/key-ring.js'
import type { Room } from '../room.js'
import { enqueueMail, MailOrder } from './mail-order.js'

/** What the letter of an invitation holds; it lies sealed in the outbox until it is sent. */
export const InvitationLetter = z.object({
  to: z.string(),
  /** Where the invited person goes, with the secret in it: '/join#…'. */
  path: z.string(),
  role: Role,
})
export type InvitationLetter = z.infer<typeof InvitationLetter>

/**
 * Puts an invitation into the outbox.
 * @param turn the hash of its token, as the invitation is kept; it tells this invitation from every other, and is nothing secret
 */
export async function enqueueInvitation(
  room: Pick<Room, 'mail' | 'now' | 'keys'>, db: Db, turn: string, invitation: InvitationLetter,
): Promise<void> {
  await enqueueMail(room, db, { kind: 'invitation', turn }, room.keys.seal(placeOf(turn), JSON.stringify(invitation)))
}

/** The sealed content of an invitation's letter. Throws when it cannot be opened. */
export function openInvitationLetter({ keys }: Pick<Room, 'keys'>, turn: string, sealed: string): InvitationLetter {
  return InvitationLetter.parse(JSON.parse(keys.open(placeOf(turn), sealed)))
}

/**
 * Drops the letters of invitations that were used, withdrawn, or have run out by `now`: nobody can use the link in them
 * any more, and the address in them is nobody's business.
 */
export async function dropSpentInvitations(db: Db, now: string): Promise<void> {
  for (const { id, mail_order: order } of await sealedMail(db)) {
    const about = MailOrder.parse(JSON.parse(order))
    if (about.kind !== 'invitation') continue
    if (await openInvitation(db, about.turn, now) === undefined) await dropMail(db, id, now)
  }
}

/** Seals anew the letters that an older key sealed and that may still be sent. */
export async function sealLettersAnew(keys: KeyRing, db: Db): Promise<void> {
  for (const { id, mail_order: order, sealed } of await sealedMail(db)) {
    const about = MailOrder.parse(JSON.parse(order))
    if (about.kind !== 'invitation' || keys.isCurrent(sealed)) continue
    const place = placeOf(about.turn)
    await keepMailSealed(db, id, keys.seal(place, keys.open(place, sealed)))
  }
}

function placeOf(turn: string): string {
  return `letter of invitation ${turn}`
}
