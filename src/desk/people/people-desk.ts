import type { ChangeRole, PeopleList } from '../../../shared/index.js'
import { Role } from '../../../shared/index.js'
import {
  appendPersonChange, type Db, deleteSessionsOf, keepRole, openInvitations, peopleNow, peopleWithCodes, personByName, type PersonRow,
  sessionCounts,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import { giveBackAllOf } from '../tickets/give-back.js'
import { removePerson } from './accounts.js'
import { forgetCodes } from './codes.js'
import type { Member } from './member.js'

/** Everyone who may sign in, and everyone who is invited. */
export async function showPeople({ db, now }: Pick<Room, 'db' | 'now'>): Promise<PeopleList> {
  const at = now().toISOString()
  const withCodes = new Set(await peopleWithCodes(db))
  const sessions = await sessionCounts(db, at)
  return {
    people: (await peopleNow(db)).map(({ id, name, role, made_at }) => ({
      name, role: Role.parse(role), madeAt: made_at, codes: withCodes.has(id), sessions: sessions.get(id) ?? 0,
    })),
    invitations: (await openInvitations(db, at)).map(({ name, role, by, made_at, expires_at }) => (
      { name, role: Role.parse(role), by, madeAt: made_at, expiresAt: expires_at })),
  }
}

/**
 * Gives a person another role. Their sessions end, so that nobody goes on with the old one; the tickets of one who leaves
 * the bench wait again.
 */
export async function changeRole(room: Room, { name, role }: ChangeRole, who: Member): Promise<PeopleList> {
  await room.db.transaction().execute(async (db) => {
    const person = await standingPerson(db, name)
    if (person.role === role) return
    await keepOneAdministrator(db, person)
    await keepRole(db, person.id, role)
    await deleteSessionsOf(db, person.id)
    const at = room.now().toISOString()
    await appendPersonChange(db, { at, person_id: person.id, by_id: who.id, what: `${role} instead of ${person.role}` })
    if (role === 'volunteer') await giveBackAllOf(db, person.id, at, who.id)
  })
  return showPeople(room)
}

/** Ends an account and its sessions; the tickets its person had wait again. */
export async function endAccount(room: Room, name: string, who: Member): Promise<PeopleList> {
  if (!await removePerson(room, name, who.id, keepOneAdministrator)) throw new DeskFault('PERSON_NOT_FOUND', { words: { name } })
  return showPeople(room)
}

/** Ends every session of somebody else. */
export async function signOutPerson(room: Room, name: string, who: Member): Promise<PeopleList> {
  await room.db.transaction().execute(async (db) => {
    const person = await standingPerson(db, name)
    await deleteSessionsOf(db, person.id)
    await appendPersonChange(db, { at: room.now().toISOString(), person_id: person.id, by_id: who.id, what: 'signed out everywhere' })
  })
  return showPeople(room)
}

/** Forgets the one-time codes of somebody who has lost their app and their recovery codes; their sessions end. */
export async function forgetCodesOf(room: Room, name: string, who: Member): Promise<PeopleList> {
  await room.db.transaction().execute(async (db) => {
    const person = await standingPerson(db, name)
    await forgetCodes(room, db, person.id, who.id)
    await deleteSessionsOf(db, person.id)
  })
  return showPeople(room)
}

async function standingPerson(db: Db, name: string): Promise<PersonRow> {
  const person = await personByName(db, name)
  if (person === undefined || person.removed_at !== null) throw new DeskFault('PERSON_NOT_FOUND', { words: { name } })
  return person
}

/** Without an administrator nobody could ever be invited again. */
async function keepOneAdministrator(db: Db, leaving: PersonRow): Promise<void> {
  if (leaving.role !== 'administrator') return
  const others = (await peopleNow(db)).filter(({ id, role }) => role === 'administrator' && id !== leaving.id)
  if (others.length === 0) throw new DeskFault('LAST_ADMINISTRATOR')
}
