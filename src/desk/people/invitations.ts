import type { Invitation, InvitationView, Invite, Join, LookAtInvitation } from '../../../shared/index.js'
import { Role } from '../../../shared/index.js'
import {
  appendPersonChange, type Db, insertInvitation, insertPerson, openInvitation, openInvitations, personByName, spendInvitation, withdrawInvitations,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { enqueueInvitation } from '../mail/invitation.js'
import type { Room } from '../room.js'
import { isEasyPassword } from './easy-password.js'
import type { Member } from './member.js'
import { hashPassword } from './passwords.js'
import { hashToken, TOKEN_BYTES } from './session-token.js'
import { type SignedIn, startSession } from './sign-in.js'

/** How long an invitation can be used: a week, in milliseconds. */
const OPEN_MS = 7 * 24 * 60 * 60 * 1000

/** Invites somebody: a link that makes one account, once, within a week. Only its hash is kept. */
export async function invite(room: Room, { name, role, email }: Invite, who: Member): Promise<Invitation> {
  const now = room.now()
  const expiresAt = new Date(now.getTime() + OPEN_MS).toISOString()
  const token = Buffer.from(room.randomBytes(TOKEN_BYTES)).toString('base64url')
  const link = `/join#${token}`
  await room.db.transaction().execute(async (db) => {
    await refuseTakenName(db, name)
    if ((await openInvitations(db, now.toISOString())).some((open) => open.name === name)) {
      throw new DeskFault('NAME_TAKEN', { words: { name } })
    }
    await insertInvitation(db, {
      token_hash: hashToken(token), name, role, made_by: who.id, made_at: now.toISOString(), expires_at: expiresAt, spent_at: null,
    })
    if (email !== undefined) await enqueueInvitation(room, db, hashToken(token), { to: email, path: link, role })
  })
  return { name, role, token, link, expiresAt, mailed: email !== undefined && room.mail !== null }
}

/** Who is invited by a link, for the page that asks them for a password. */
export async function lookAtInvitation({ db, now }: Pick<Room, 'db' | 'now'>, { token }: LookAtInvitation): Promise<InvitationView> {
  const row = await openInvitation(db, hashToken(token), now().toISOString())
  if (row === undefined) throw new DeskFault('INVITATION_SPENT')
  return { name: row.name, role: Role.parse(row.role), expiresAt: row.expires_at }
}

/** Makes the account of an invitation with the password that its person chose, and signs them in. */
export async function join(room: Room, { token, password }: Join): Promise<SignedIn> {
  const { name } = await lookAtInvitation(room, { token })
  if (isEasyPassword(password, name)) throw new DeskFault('PASSWORD_EASY')
  const hash = await hashPassword(password)
  const member = await room.db.transaction().execute(async (db): Promise<Member> => {
    const at = room.now().toISOString()
    const row = await openInvitation(db, hashToken(token), at)
    if (row === undefined || !await spendInvitation(db, row.token_hash, at)) throw new DeskFault('INVITATION_SPENT')
    await refuseTakenName(db, row.name)
    const id = await insertPerson(db, { name: row.name, role: row.role, password_hash: hash, made_at: at, removed_at: null })
    await appendPersonChange(db, { at, person_id: id, by_id: row.made_by, what: `joined as ${row.role}` })
    return { id, name: row.name, role: Role.parse(row.role) }
  })
  return startSession(room, member)
}

/** Withdraws the open invitation to a name. */
export async function withdrawInvitation({ db, now }: Pick<Room, 'db' | 'now'>, name: string): Promise<void> {
  if (!await withdrawInvitations(db, name, now().toISOString())) throw new DeskFault('PERSON_NOT_FOUND', { words: { name } })
}

async function refuseTakenName(db: Db, name: string): Promise<void> {
  if (await personByName(db, name) !== undefined) throw new DeskFault('NAME_TAKEN', { words: { name } })
}
