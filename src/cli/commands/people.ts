import { randomBytes } from 'node:crypto'
import { Argument, Command } from 'commander'
import { Role } from '../../../shared/index.js'
import { addPerson, listPeople, type PeopleRoom, removePerson } from '../../desk/index.js'
import { print } from '../terminal.js'
import { withStore } from '../with-store.js'

/** `frondline people`: who may sign in. Works on the store while the service runs. */
export function peopleCommand(): Command {
  return new Command('people')
    .description('See and change who may sign in. The store is the database in DATABASE_URL, or the folder in FRONDLINE_HOME, ./frondline-data when neither is set; the service has made it.')
    .addCommand(new Command('add')
      .description('Make an account with a random password, which is printed once.')
      .argument('<name>', 'the name to sign in with')
      .addArgument(new Argument('<role>', 'what they do').choices(Role.options))
      .action((name: string, role: Role) => withPeople(async (room) => {
        if (!/^\S.{0,78}\S$|^\S$/.test(name)) throw new Error('A name has 1 to 80 characters and no blank at either end.')
        const made = await addPerson(room, name, role)
        print(`${made.name} may sign in as ${made.role} with the password ${made.password}`, 'It is shown only now. Hand it over in person.')
      })))
    .addCommand(new Command('list')
      .description('List everyone who may sign in.')
      .option('--json', 'as one JSON list')
      .action(({ json }: { json?: boolean }) => withPeople(async (room) => {
        const people = await listPeople(room)
        if (json === true) print(JSON.stringify(people))
        else if (people.length === 0) print('Nobody may sign in yet. Add someone with: frondline people add NAME ROLE')
        else print(...people.map(({ name, role }) => `${name}  ${role}`))
      })))
    .addCommand(new Command('remove')
      .description('End an account and all its sessions. What the person did stays in the histories.')
      .argument('<name>', 'the name they sign in with')
      .action((name: string) => withPeople(async (room) => {
        if (await removePerson(room, name)) print(`${name} may no longer sign in.`)
        else throw new Error(`Nobody called "${name}" may sign in. See frondline people list.`)
      })))
}

function withPeople(work: (room: PeopleRoom) => Promise<void>): Promise<void> {
  return withStore(({ db }) => work({ db, now: () => new Date(), randomBytes: (count) => randomBytes(count) }))
}
