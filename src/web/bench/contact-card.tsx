import { useState } from 'preact/hooks'
import type { TicketContact, TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'

/** The asker's contact details, shown on wish only: each reading is written down. */
export function ContactCard({ service, view }: { readonly service: StaffService, readonly view: TicketView }) {
  const [shown, setShown] = useState<TicketContact | null>(null)
  const [failed, setFailed] = useState(false)

  async function show(): Promise<void> {
    const reply = await service.ticketContact(view.ticket)
    setFailed(!reply.ok)
    if (reply.ok) setShown(reply.value)
  }
  return (
    <section class="step contact-card">
      <h3>Contact</h3>
      {!view.contactGiven ? <p>None left, or erased since. The asker comes back by their private link.</p>
        : shown === null ? <p class="row"><button type="button" class="second" onClick={() => void show()}>Show the contact details</button> <span class="hint">It is written down that you read them.</span></p>
          : <Details {...shown} />}
      {failed && <p class="fault" role="alert">The contact details could not be fetched. Please try again.</p>}
    </section>
  )
}

function Details({ contact, readBefore }: TicketContact) {
  if (contact === null) return <p>They are erased.</p>
  return (
    <>
      <ul>
        {contact.name !== undefined && <li>{contact.name}</li>}
        {contact.email !== undefined && <li><a href={`mailto:${contact.email}`}>{contact.email}</a></li>}
        {contact.phone !== undefined && <li><a href={`tel:${contact.phone.replace(/[^0-9+]/g, '')}`}>{contact.phone}</a></li>}
        {contact.callTime !== undefined && <li>Best time to call: {contact.callTime}</li>}
      </ul>
      {readBefore.length > 0 && (
        <details><summary>Read before by</summary><ul>{readBefore.map(reading => <li key={reading.at}>{reading.by} <span class="origin">{momentInWords(reading.at)}</span></li>)}</ul></details>
      )}
    </>
  )
}
