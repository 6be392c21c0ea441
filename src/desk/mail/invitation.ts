import { z } from 'zod'
import { Role } from '../../../shared/index.js'
import type { Db } from '../../store/index.js'
import type { Room } from '../room.js'
import { enqueueMail } from './mail-order.js'

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
 * @param turn tells this invitation from every other; nothing secret
 */
export async function enqueueInvitation(
  room: Pick<Room, 'mail' | 'now' | 'keys'>, db: Db, turn: string, invitation: InvitationLetter,
): Promise<void> {
  await enqueueMail(room, db, { kind: 'invitation', turn }, room.keys.seal(placeOf(turn), JSON.stringify(invitation)))
}

/** The sealed content of an invitation's letter. Throws when it cannot be opened. */
export function openInvitation({ keys }: Pick<Room, 'keys'>, turn: string, sealed: string): InvitationLetter {
  return InvitationLetter.parse(JSON.parse(keys.open(placeOf(turn), sealed)))
}

function placeOf(turn: string): string {
  return `letter of invitation ${turn}`
}
