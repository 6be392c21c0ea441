import { type Person, Role } from '../../../shared/index.js'
import {
  appendPersonChange, countPeople, type Db, deleteCodes, deleteSessionsOf, insertPerson, markPersonRemoved, peopleNow, personByName,
  type PersonRow,
} from '../../store/index.js'
import type { PeopleRoom } from '../room.js'
import { giveBackAllOf } from '../tickets/give-back.js'
import { hashPassword } from './passwords.js'

/** A new account with the password it starts with; the password is shown once and kept nowhere. */
export interface NewAccount {
  readonly name: string
  readonly role: Role
  readonly password: string
}

/** Random bytes in a password that we make: 120 bits, 20 characters to type. */
const PASSWORD_BYTES = 15

/** The people of the demonstration, one for each role. */
const DEMONSTRATION_PEOPLE: readonly Omit<NewAccount, 'password'>[] = [
  { name: 'willow', role: 'volunteer' },
  { name: 'sedge', role: 'specialist' },
  { name: 'alder', role: 'administrator' },
]

/**
 * Makes an account with a random password. Throws when the name was ever used: histories name people, so a name is
 * never given to a second person.
 */
export async function addPerson(room: PeopleRoom, name: string, role: Role): Promise<NewAccount> {
  if (await personByName(room.db, name) !== undefined) {
    throw new Error(`The name "${name}" is taken, or was once. Choose another.`)
  }
  const password = Buffer.from(room.randomBytes(PASSWORD_BYTES)).toString('base64url')
  await insertPerson(room.db, {
    name, role, password_hash: await hashPassword(password), made_at: room.now().toISOString(), removed_at: null,
  })
  return { name, role, password }
}

/**
 * Ends an account and all its sessions, and forgets its one-time codes; the tickets its person had wait again. False when
 * nobody has this name.
 * @param byId the administrator who does it; null for the command line
 * @param mayGo throws when this person may not be removed
 */
export async function removePerson(
  room: PeopleRoom, name: string, byId: number | null = null, mayGo: (db: Db, person: PersonRow) => Promise<void> = async () => undefined,
): Promise<boolean> {
  return room.db.transaction().execute(async (db) => {
    const person = await personByName(db, name)
    if (person === undefined || person.removed_at !== null) return false
    await mayGo(db, person)
    await markPersonRemoved(db, person.id, room.now().toISOString())
    await deleteSessionsOf(db, person.id)
    await deleteCodes(db, person.id)
    const at = room.now().toISOString()
    await appendPersonChange(db, { at, person_id: person.id, by_id: byId, what: 'removed' })
    await giveBackAllOf(db, person.id, at, byId)
    return true
  })
}

/** Everyone who may sign in, by name. */
export async function listPeople(room: PeopleRoom): Promise<readonly Person[]> {
  return (await peopleNow(room.db)).map((row) => ({ name: row.name, role: Role.parse(row.role) }))
}

/** On a store that has never had people, makes one account a role; otherwise makes none. */
export async function addDemonstrationPeople(room: PeopleRoom): Promise<readonly NewAccount[]> {
  if (await countPeople(room.db) > 0) return []
  const made: NewAccount[] = []
  for (const { name, role } of DEMONSTRATION_PEOPLE) made.push(await addPerson(room, name, role))
  return made
}
