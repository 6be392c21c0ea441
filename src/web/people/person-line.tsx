import { useState } from 'preact/hooks'
import type { PeopleList, Role } from '../../../shared/index.js'
import type { PersonChangeBodies } from '../wire/people-service.js'
import { dayInWords } from '../wording/day.js'
import { roleNames } from './role-names.js'

interface PersonLineProps {
  readonly person: PeopleList['people'][number]
  /** True for the line of whoever looks. */
  readonly mine: boolean
  readonly onChange: <Path extends keyof PersonChangeBodies>(path: Path, body: PersonChangeBodies[Path], said: string) => void
}

/** One person with what an administrator may do. Removing asks twice. */
export function PersonLine({ person, mine, onChange }: PersonLineProps) {
  const { name } = person
  const [removing, setRemoving] = useState(false)
  const [role, setRole] = useState<Role>(person.role)
  return (
    <li class="person">
      <p>
        <b>{name}</b>{mine && ' (you)'}{' '}
        <span class="origin">since {dayInWords(person.madeAt)}, {person.codes ? 'one-time codes on' : 'no one-time codes'}, {signedInOn(person.sessions)}</span>
      </p>
      <div class="row">
        {mine ? <span>{roleWords(person.role)}</span> : (
          <form class="row" onSubmit={event => { event.preventDefault(); if (role !== person.role) onChange('role', { name, role }, `${name} is now ${roleWords(role).toLowerCase()}, and signs in anew.`) }}>
            {/* Arrow keys choose; only the button changes anything. */}
            <select class="role" aria-label={`Role of ${name}`} value={role} onChange={event => setRole(roleNamed(event.currentTarget.value))}>
              {roleNames.map(row => <option key={row.role} value={row.role}>{row.words}</option>)}
            </select>
            <button type="submit" class="second" disabled={role === person.role} aria-label={`Change the role of ${name}`}>Change role</button>
          </form>
        )}
        <button type="button" class="quiet" disabled={person.sessions === 0} aria-label={`Sign ${name} out everywhere`} onClick={() => onChange('sign-out', { name }, `${name} is signed out everywhere.`)}>Sign out everywhere</button>
        {person.codes && !mine && <button type="button" class="quiet" aria-label={`Forget the one-time codes of ${name}`} onClick={() => onChange('forget-codes', { name }, `The one-time codes of ${name} are forgotten.`)}>Forget the codes</button>}
        {!mine && (removing
          ? (
            <span class="row" role="group" aria-label={`Remove ${name}`}>
              <button type="button" class="main" onClick={() => onChange('remove', { name }, `${name} is removed; their open tickets wait again.`)}>Yes, remove {name}</button>
              <button type="button" class="quiet" onClick={() => setRemoving(false)}>Keep</button>
            </span>
          )
          : <button type="button" class="quiet" aria-label={`Remove ${name}`} onClick={() => setRemoving(true)}>Remove</button>)}
      </div>
    </li>
  )
}

/** On how many devices somebody is signed in: each sign-in that still holds is one. */
function signedInOn(sessions: number): string {
  return sessions === 0 ? 'not signed in' : sessions === 1 ? 'signed in on 1 device' : `signed in on ${sessions} devices`
}

function roleWords(role: Role): string {
  return roleNames.find(row => row.role === role)?.words ?? role
}

function roleNamed(value: string): Role {
  return roleNames.find(row => row.role === value)?.role ?? 'volunteer'
}
