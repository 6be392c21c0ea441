import type { ChangePassword } from '../../../shared/index.js'
import { appendPersonChange, deleteOtherSessionsOf, deleteSessionsOf, keepPassword } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import { confirmPassword } from './confirm-password.js'
import type { Member } from './member.js'
import { isEasyPassword } from './easy-password.js'
import { hashPassword } from './passwords.js'
import { hashToken } from './session-token.js'

/** Changes a person's own password. Every other session of theirs ends; the one that asks goes on. */
export async function changePassword(
  room: Room, who: Member, { current, next }: ChangePassword, session: { readonly token: string; readonly address: string },
): Promise<void> {
  await confirmPassword(room, who, current, session.address)
  if (isEasyPassword(next, who.name) || next === current) throw new DeskFault('PASSWORD_EASY')
  const hash = await hashPassword(next)
  await room.db.transaction().execute(async (db) => {
    await keepPassword(db, who.id, hash)
    await deleteOtherSessionsOf(db, who.id, hashToken(session.token))
    await appendPersonChange(db, { at: room.now().toISOString(), person_id: who.id, by_id: who.id, what: 'password changed' })
  })
}

/** Ends every session of a person, the one that asks among them. */
export async function signOutEverywhere(room: Room, who: Member): Promise<void> {
  await room.db.transaction().execute(async (db) => {
    await deleteSessionsOf(db, who.id)
    await appendPersonChange(db, { at: room.now().toISOString(), person_id: who.id, by_id: who.id, what: 'signed out everywhere' })
  })
}
