import type { SignIn } from '../../../shared/index.js'
import {
  codeSecretOf, deleteSession, deleteSpentSessions, insertSession, personByName, personBySession,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import { takesCode } from './codes.js'
import { helplineSettings } from './helpline-settings.js'
import { type Member, memberFromRow } from './member.js'
import { passwordFits } from './passwords.js'
import { hashToken, SESSION_MS, TOKEN_BYTES } from './session-token.js'
import { claimAttempt, clearAttempt } from './throttle.js'

/** A fresh session: the token goes to the person and is kept nowhere. */
export interface SignedIn {
  readonly member: Member
  readonly token: string
  readonly expiresAt: Date
}

/**
 * Signs a person in. A wrong name and a wrong password are one and the same fault, and take the same time. Whoever has
 * one-time codes must give one besides; an attempt without it counts as failed, or it could be used to start the count anew.
 */
export async function signIn(room: Room, { name, password, code }: SignIn, address: string): Promise<SignedIn> {
  const from = { name, address }
  const wait = await claimAttempt(room.db, from, room.now())
  if (wait > 0) throw new DeskFault('SIGN_IN_PAUSED', { retryAfterSeconds: Math.ceil(wait / 1000) })

  const row = await personByName(room.db, name)
  const standing = row !== undefined && row.removed_at === null ? row : null
  const fits = await passwordFits(password, standing?.password_hash ?? null)
  if (standing === null || !fits) throw new DeskFault('SIGN_IN_FAILED')

  const secret = await codeSecretOf(room.db, standing.id)
  if (secret !== undefined && secret.confirmed_at !== null) {
    if (code === undefined) throw new DeskFault('CODE_NEEDED')
    if (!await room.db.transaction().execute((db) => takesCode(room, db, standing.id, code))) throw new DeskFault('CODE_WRONG')
  }
  await clearAttempt(room.db, from, room.now())
  return startSession(room, memberFromRow(standing))
}

/** Ends the session with this token; an unknown token is no fault. */
export async function signOut(room: Room, token: string): Promise<void> {
  await deleteSession(room.db, hashToken(token))
}

/** Whose session this token is, or null when it is unknown, has run out, or the person was removed. */
export async function memberOfSession(room: Room, token: string): Promise<Member | null> {
  const row = await personBySession(room.db, hashToken(token), room.now().toISOString())
  return row === undefined ? null : withDuty(room, memberFromRow(row))
}

/** Opens a fresh session. */
export async function startSession(room: Room, member: Member): Promise<SignedIn> {
  const now = room.now()
  const expiresAt = new Date(now.getTime() + SESSION_MS)
  const token = Buffer.from(room.randomBytes(TOKEN_BYTES)).toString('base64url')
  await deleteSpentSessions(room.db, now.toISOString())
  await insertSession(room.db, {
    token_hash: hashToken(token), person_id: member.id, made_at: now.toISOString(), expires_at: expiresAt.toISOString(),
  })
  return { member: await withDuty(room, member), token, expiresAt }
}

/** Adds whether the person still has to set up the one-time codes that their role needs. */
async function withDuty({ db }: Room, member: Member): Promise<Member> {
  if (!(await helplineSettings(db)).codesFor.includes(member.role)) return member
  const secret = await codeSecretOf(db, member.id)
  return { ...member, mustSetUpCodes: secret === undefined || secret.confirmed_at === null }
}
