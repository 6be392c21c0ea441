import { render } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Person, RegionView } from '../../../shared/index.js'
import { FirstReports } from '../bench/first-reports.js'
import { TicketListPage, type ListChoice } from '../bench/ticket-list.js'
import { TicketSheet } from '../bench/ticket-sheet.js'
import { MailNotes } from '../bench/mail-notes.js'
import { createMailService } from '../wire/mail-service.js'
import { createSeasonService } from '../wire/season-service.js'
import { createSender } from '../wire/sender.js'
import { createStaffService } from '../wire/staff-service.js'
import { StaffFrame } from './staff-frame.js'
import './page.css'
import './sheet.css'
import './bench.css'

const service = createStaffService()
const mail = createMailService()
const season = createSeasonService(createSender({ base: '', credentials: 'same-origin' }))

function BenchPage({ person, region }: { readonly person: Person, readonly region: RegionView | null }) {
  const [ticket, setTicket] = useState(ticketInAddress)
  const [choice, setChoice] = useState<ListChoice>({ pile: 'waiting', sought: {} })
  useEffect(() => {
    const follow = () => setTicket(ticketInAddress())
    window.addEventListener('hashchange', follow)
    return () => window.removeEventListener('hashchange', follow)
  }, [])
  return ticket === null
    ? <TicketListPage service={service} region={region} me={person.name} choice={choice} onChoice={setChoice} />
    : <TicketSheet key={ticket} service={service} region={region} ticket={ticket} me={person.name} onList={() => { location.hash = '' }} />
}

/** The ticket shown is part of the address, so that the browser's own way back works. */
function ticketInAddress(): string | null {
  return /^#ticket\/([0-9]{1,12})$/.exec(location.hash)?.[1] ?? null
}

const page = document.querySelector('#page')
if (page !== null) {
  render(
    <StaffFrame service={service} title="Bench" here="/bench" roles={['specialist', 'administrator']}>
      {(person, region) => <><FirstReports service={season} /><BenchPage person={person} region={region} /><MailNotes service={mail} /></>}
    </StaffFrame>, page)
}
