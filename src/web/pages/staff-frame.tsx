import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Person, RegionView, Role } from '../../../shared/index.js'
import { GuideNews } from './guide-news.js'
import { WordingProvider } from '../wording/language.js'
import { staffWording } from '../wording/staff.js'
import type { StaffService } from '../wire/staff-service.js'

interface StaffFrameProps {
  readonly service: StaffService
  readonly title: string
  /** This page's own address, to come back to after signing in. */
  readonly here: '/sheet' | '/bench'
  readonly roles: readonly Role[]
  readonly children: (person: Person, region: RegionView | null) => ComponentChildren
}

/** Who is signed in and where, above a staff page. Someone not signed in is sent to the sign-in page. */
export function StaffFrame({ service, title, here, roles, children }: StaffFrameProps) {
  const [person, setPerson] = useState<Person | null>(null)
  const [region, setRegion] = useState<RegionView | null>(null)
  const [lost, setLost] = useState(false)
  const [round, setRound] = useState(0)

  useEffect(() => {
    void service.session().then(reply => {
      if (!reply.ok) setLost(true)
      else if (reply.value.person === null) location.replace(`/sign-in?next=${here}`)
      else setPerson(reply.value.person)
    })
    void service.region().then(reply => { if (reply.ok) setRegion(reply.value) })
  }, [round])

  async function signOut(): Promise<void> {
    await service.signOut()
    location.replace('/sign-in')
  }

  return (
    <>
      <header class="masthead">
        <h1>{title} {region !== null && <span>{region.helpline}{region.demonstration && ' (demonstration)'}</span>}</h1>
        {person !== null && (
          <p class="row"><span>Signed in: {person.name}, {person.role}</span> <button type="button" class="quiet" onClick={() => void signOut()}>Sign out</button></p>
        )}
      </header>
      {person !== null && <GuideNews service={service} />}
      <main class="page">
        {lost && person === null && (
          <p role="alert">We cannot reach the service. <button type="button" onClick={() => { setLost(false); setRound(round + 1) }}>Try again</button></p>
        )}
        {person !== null && (roles.includes(person.role)
          ? <WordingProvider value={staffWording}>{children(person, region)}</WordingProvider>
          : <p>This page is for another role than yours ({person.role}). <a href={here === '/bench' ? '/sheet' : '/bench'}>Go to your own page</a></p>)}
      </main>
    </>
  )
}
