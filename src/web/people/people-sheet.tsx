import { useEffect, useState } from 'preact/hooks'
import type { PeopleList } from '../../../shared/index.js'
import type { PersonChangeBodies } from '../wire/people-service.js'
import type { StaffService } from '../wire/staff-service.js'
import { dayInWords } from '../wording/day.js'
import { inWords } from '../wording/in-words.js'
import { InviteForm } from './invite-form.js'
import { PersonLine } from './person-line.js'

/** Everyone who may sign in, and who is invited; for administrators. */
export function PeopleSheet({ service, me }: { readonly service: StaffService, readonly me: string }) {
  const [list, setList] = useState<PeopleList | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [done, setDone] = useState('')

  async function fetchPeople(): Promise<void> {
    const reply = await service.people()
    setFault(inWords(reply))
    if (reply.ok) setList(reply.value)
  }
  useEffect(() => { void fetchPeople() }, [])

  async function change<Path extends keyof PersonChangeBodies>(path: Path, body: PersonChangeBodies[Path], said: string): Promise<void> {
    const reply = await service.changePerson(path, body)
    setFault(inWords(reply))
    setDone(reply.ok ? said : '')
    if (reply.ok) setList(reply.value)
  }
  return (
    <section class="sheet" aria-labelledby="people-title">
      <header class="sheet-head"><h2 id="people-title">People of the helpline</h2></header>
      {fault !== null && <p class="trouble" role="alert">{fault}</p>}
      <p class="news" role="status">{done}</p>
      {list === null ? fault === null && <p class="step">Fetching the names …</p> : (
        <>
          <ul class="people">
            {list.people.map(person => <PersonLine key={person.name} person={person} mine={person.name === me} onChange={(path, body, said) => void change(path, body, said)} />)}
          </ul>
          <InviteForm service={service} onInvited={() => void fetchPeople()} />
          {list.invitations.length > 0 && (
            <section class="step">
              <h3>Invited, not here yet</h3>
              <ul class="people">
                {list.invitations.map(invited => (
                  <li class="person" key={invited.name}>
                    <p><b>{invited.name}</b> <span class="origin">{invited.role}, invited by {invited.by}, until {dayInWords(invited.expiresAt)}</span></p>
                    <p><button type="button" class="quiet" aria-label={`Withdraw the invitation of ${invited.name}`} onClick={() => void change('withdraw-invitation', { name: invited.name }, `The invitation of ${invited.name} is withdrawn.`)}>Withdraw</button></p>
                  </li>
                ))}
              </ul>
            </section>
          )}
        </>
      )}
    </section>
  )
}
