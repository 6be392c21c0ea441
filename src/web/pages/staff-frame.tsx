import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Me, RegionView, Role } from '../../../shared/index.js'
import { GuideNews } from './guide-news.js'
import { SheetWordingProvider } from '../wording/sheet-language.js'
import { staffWording } from '../wording/staff.js'
import type { StaffService } from '../wire/staff-service.js'

interface StaffFrameProps {
  readonly service: StaffService
  readonly title: string
  /** This page's own address, to come back to after signing in. */
  readonly here: StaffPage
  readonly roles: readonly Role[]
  readonly children: (person: Me, region: RegionView | null) => ComponentChildren
}

/** Who is signed in and where, above a staff page. Someone not signed in is sent to the sign-in page. */
export function StaffFrame({ service, title, here, roles, children }: StaffFrameProps) {
  const [person, setPerson] = useState<Me | null>(null)
  const [region, setRegion] = useState<RegionView | null>(null)
  const [lost, setLost] = useState(false)
  const [round, setRound] = useState(0)

  useEffect(() => {
    void whoIsHere()
    void service.region().then(reply => { if (reply.ok) setRegion(reply.value) })
  }, [round])

  async function whoIsHere(): Promise<void> {
    const reply = await service.session()
    if (!reply.ok) { setLost(true); return }
    const { person: me } = reply.value
    if (me === null) location.replace(`/sign-in?next=${here}`)
    else if (me.codes === 'to be set up' && here !== '/account') location.replace('/account')
    else setPerson(me)
  }

  async function signOut(): Promise<void> {
    await service.signOut()
    location.replace('/sign-in')
  }

  return (
    <>
      <header class="masthead">
        <h1>{title} {region !== null && <span>{region.helpline}{region.demonstration && ' (demonstration)'}</span>}</h1>
        {person !== null && (
          <nav class="staff-ways" aria-label="Pages">
            {staffPages.filter(way => way.roles.includes(person.role)).map(way => <a key={way.page} href={way.page} aria-current={way.page === here ? 'page' : undefined}>{way.words}</a>)}
          </nav>
        )}
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
          ? <SheetWordingProvider value={staffWording}>{children(person, region)}</SheetWordingProvider>
          : <p>This page is for another role than yours ({person.role}). <a href={person.role === 'volunteer' ? '/sheet' : '/bench'}>Go to your own page</a></p>)}
      </main>
    </>
  )
}

export type StaffPage = '/sheet' | '/bench' | '/season' | '/people' | '/account'

/** The pages of the helpline's people, and whose they are. */
const staffPages: readonly { readonly page: StaffPage, readonly words: string, readonly roles: readonly Role[] }[] = [
  { page: '/sheet', words: 'Call sheet', roles: ['volunteer', 'specialist', 'administrator'] },
  { page: '/bench', words: 'Bench', roles: ['specialist', 'administrator'] },
  { page: '/season', words: 'Season', roles: ['volunteer', 'specialist', 'administrator'] },
  { page: '/people', words: 'People', roles: ['administrator'] },
  { page: '/account', words: 'My account', roles: ['volunteer', 'specialist', 'administrator'] },
]
