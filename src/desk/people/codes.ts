import { createHash } from 'node:crypto'
import type { CodeSecret, ConfirmCode, ConfirmPassword, Me, RecoveryCodes } from '../../../shared/index.js'
import {
  allCodeSecrets, appendPersonChange, codeSecretOf, confirmCodeSecret, type Db, deleteCodes, keepCodeSecret, keepRecoveryCodes,
  recoveryCodesLeft, spendRecoveryCode, takeStep,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { KeyRing } from '../privacy/key-ring.js'
import type { Room } from '../room.js'
import { confirmPassword } from './confirm-password.js'
import type { Member } from './member.js'
import { codeAddress, SECRET_BYTES, secretInText, stepOfCode } from './one-time-code.js'

const RECOVERY_CODES = 10
/** 80 random bits in one recovery code. */
const RECOVERY_BYTES = 10

/** The signed-in person, as they see themselves. */
export async function showMe({ db }: Pick<Room, 'db'>, who: Member): Promise<Me> {
  const secret = await codeSecretOf(db, who.id)
  const on = secret !== undefined && secret.confirmed_at !== null
  return {
    name: who.name, role: who.role, codes: on ? 'on' : who.mustSetUpCodes === true ? 'to be set up' : 'off',
    recoveryCodesLeft: on ? await recoveryCodesLeft(db, who.id) : 0,
  }
}

/**
 * Begins one-time codes for a person who has none: a fresh secret for their app. They are in force only once a code of it
 * was shown.
 */
export async function startCodes(room: Room, who: Member, { password }: ConfirmPassword, address: string): Promise<CodeSecret> {
  await confirmPassword(room, who, password, address)
  const secret = room.randomBytes(SECRET_BYTES)
  await room.db.transaction().execute(async (db) => {
    if ((await codeSecretOf(db, who.id))?.confirmed_at != null) throw new DeskFault('CODES_ON')
    await keepCodeSecret(db, {
      person_id: who.id, sealed: room.keys.seal(placeOf(who.id), Buffer.from(secret).toString('base64url')),
      made_at: room.now().toISOString(), confirmed_at: null, last_step: 0,
    })
  })
  return { secret: secretInText(secret), address: codeAddress(secret, who.name, room.knowledge().guide.region.helpline) }
}

/** Puts one-time codes in force, once a code shows that the person's app has the secret. Gives recovery codes, once. */
export async function confirmCodes(room: Room, who: Member, { code }: ConfirmCode): Promise<RecoveryCodes> {
  const codes = Array.from({ length: RECOVERY_CODES }, () => recoveryCode(room.randomBytes(RECOVERY_BYTES)))
  await room.db.transaction().execute(async (db) => {
    const secret = await codeSecretOf(db, who.id)
    if (secret === undefined) throw new DeskFault('CODES_OFF')
    if (secret.confirmed_at !== null) throw new DeskFault('CODES_ON')
    if (!await takesCode(room, db, who.id, code)) throw new DeskFault('CODE_WRONG')
    const at = room.now().toISOString()
    await confirmCodeSecret(db, who.id, at)
    await keepRecoveryCodes(db, who.id, codes.map((one) => recoveryHash(who.id, one)))
    await appendPersonChange(db, { at, person_id: who.id, by_id: who.id, what: 'one-time codes on' })
  })
  return { codes }
}

/** Ends one-time codes. Where the role needs them, new ones must be set up at once. */
export async function stopCodes(room: Room, who: Member, { password }: ConfirmPassword, address: string): Promise<void> {
  await confirmPassword(room, who, password, address)
  await room.db.transaction().execute((db) => forgetCodes(room, db, who.id, who.id))
}

/** Forgets a person's codes, for one who has lost their telephone too. */
export async function forgetCodes({ now }: Pick<Room, 'now'>, db: Db, personId: number, byId: number): Promise<void> {
  await deleteCodes(db, personId)
  await appendPersonChange(db, { at: now().toISOString(), person_id: personId, by_id: byId, what: 'one-time codes off' })
}

/**
 * Whether a code lets this person in: the code of a time step near now, not taken before, or a recovery code not used
 * before. It is used up with that.
 */
export async function takesCode(room: Pick<Room, 'keys' | 'now'>, db: Db, personId: number, code: string): Promise<boolean> {
  const row = await codeSecretOf(db, personId)
  if (row === undefined) return false
  const secret = Buffer.from(room.keys.open(placeOf(personId), row.sealed), 'base64url')
  const step = stepOfCode(secret, code, room.now())
  if (step !== null) return takeStep(db, personId, step)
  return row.confirmed_at !== null && spendRecoveryCode(db, personId, recoveryHash(personId, code), room.now().toISOString())
}

/** Seals anew the secrets that an older key sealed; whose they are and what codes were taken stays. */
export async function sealSecretsAnew(keys: KeyRing, db: Db): Promise<void> {
  for (const row of await allCodeSecrets(db)) {
    if (keys.isCurrent(row.sealed)) continue
    const place = placeOf(row.person_id)
    await keepCodeSecret(db, { ...row, sealed: keys.seal(place, keys.open(place, row.sealed)) })
  }
}

function placeOf(personId: number): string {
  return `one-time codes of person ${personId}`
}

/** Four groups of four signs, with none that look alike. */
function recoveryCode(bytes: Uint8Array): string {
  const signs = 'abcdefghijkmnpqrstuvwxyz23456789'
  const bits = [...bytes].map((byte) => byte.toString(2).padStart(8, '0')).join('')
  const letters = Array.from({ length: bits.length / 5 }, (_, place) => signs[Number.parseInt(bits.slice(place * 5, place * 5 + 5), 2)] ?? '')
  return [0, 4, 8, 12].map((from) => letters.slice(from, from + 4).join('')).join('-')
}

function recoveryHash(personId: number, code: string): string {
  return createHash('sha256').update(`${personId}:${code.toLowerCase().replaceAll(/[^a-z0-9]/g, '')}`).digest('hex')
}
