import { personById } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import type { Member } from './member.js'
import { passwordFits } from './passwords.js'
import { claimAttempt, clearAttempt } from './throttle.js'

/** Asks a signed-in person for their password once more, as slowly after failures as a sign-in. */
export async function confirmPassword(room: Pick<Room, 'db' | 'now'>, who: Member, password: string, address: string): Promise<void> {
  const from = { name: who.name, address }
  const wait = await claimAttempt(room.db, from, room.now())
  if (wait > 0) throw new DeskFault('SIGN_IN_PAUSED', { retryAfterSeconds: Math.ceil(wait / 1000) })
  const row = await personById(room.db, who.id)
  if (!await passwordFits(password, row?.password_hash ?? null)) throw new DeskFault('PASSWORD_WRONG')
  await clearAttempt(room.db, from, room.now())
}
