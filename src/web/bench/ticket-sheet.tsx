import { useEffect, useRef, useState } from 'preact/hooks'
import type { LikelyLine, RegionView, SettleTicket, TicketContact, TicketView } from '../../../shared/index.js'
import { FilledLines } from '../case/filled-lines.js'
import { FlagCards } from '../case/flag-cards.js'
import { LikelyList } from '../case/likely-list.js'
import { SpecimenLabel } from '../case/specimen-label.js'
import { WatchNotices } from '../case/watch-notices.js'
import { KeyBoard, useKeys, type KeyAction } from '../sheet/keys.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'
import { PlaceGuesses } from './place-guesses.js'
import { SettleForm } from './settle-form.js'

interface TicketSheetProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly ticket: string
  /** Name of the specialist at the bench. */
  readonly me: string
  readonly onList: () => void
}

/** One ticket as one sheet: everything gathered, what it could be and why, and the answer to be written. */
export function TicketSheet({ service, region, ticket, me, onList }: TicketSheetProps) {
  const [view, setView] = useState<TicketView | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const title = useRef<HTMLHeadingElement>(null)
  const answerText = useRef<HTMLTextAreaElement>(null)

  async function fetchTicket(): Promise<void> {
    const reply = await service.ticket(ticket)
    if (reply.ok) setView(reply.value)
    else setSaid(reply.trouble.kind === 'refused' ? reply.trouble.detail : 'We cannot reach the service just now.')
  }
  useEffect(() => { void fetchTicket() }, [ticket])
  useEffect(() => { if (view !== null) title.current?.focus() }, [view === null])

  async function change(send: () => ReturnType<StaffService['takeTicket']>): Promise<void> {
    if (sending) return
    setSending(true)
    const reply = await send()
    setSending(false)
    if (reply.ok) {
      setView(reply.value)
      setSaid(null)
      return
    }
    setSaid(reply.trouble.kind === 'refused' ? reply.trouble.detail : 'We cannot reach the service just now. Nothing was lost; please try again.')
    // Somebody else may have taken or settled it meanwhile: show how it stands.
    if (reply.trouble.kind === 'refused') await fetchTicket()
  }

  const mine = view?.state === 'taken' && view.takenBy === me
  const take = () => void change(() => service.takeTicket(ticket))
  // At the head of the advice, where a greeting goes.
  const startAnswer = () => {
    answerText.current?.focus()
    answerText.current?.setSelectionRange(0, 0)
    answerText.current?.scrollTo({ top: 0 })
  }
  const actions: KeyAction[] = []
  if (view?.state === 'waiting') actions.push({ key: 'T', words: 'Take this ticket', run: take })
  if (mine) actions.push({ key: 'A', words: 'Answer: go to the text', run: startAnswer })
  actions.push({ key: 'L', words: 'List of tickets', run: onList })
  const keys = useKeys(actions, () => {})

  return (
    <div class="bench">
      <section class="sheet" aria-labelledby="ticket-title">
        <header class="sheet-head">
          <h2 id="ticket-title" tabIndex={-1} ref={title}>Ticket {ticket}</h2>
          {view !== null && <p class="sheet-by">{stateInWords(view)}</p>}
        </header>
        {said !== null && <p class="trouble" role="alert">{said}</p>}
        {view === null ? said === null && <p class="step">Fetching the ticket …</p> : sheet(view)}
      </section>
      <KeyBoard actions={actions} keys={keys} />
    </div>
  )

  function sheet(view: TicketView) {
    const { case: file } = view
    const reply = file.ticket?.reply ?? null
    return (
      <>
        <div class="step why-line"><p>{view.urgent && <b class="mark">Urgent</b>} {view.why}</p></div>
        <FlagCards cards={file.cards} newCards={[]} />
        <div class="sheet-top">
          <section class="words" aria-label="In their words">
            <h3>In their words</h3>
            {file.words.map((words, place) => <blockquote key={place}>{words}</blockquote>)}
            {view.note !== null && view.note !== '' && <><h3>On handing over</h3><blockquote>{view.note}</blockquote></>}
          </section>
          <SpecimenLabel view={file} districtName={region?.districts.find(row => row.district === file.district)?.name ?? file.district} />
        </div>
        <PlaceGuesses view={file} />
        {file.lines.length === 0 ? <p class="step hint">No check was answered.</p> : <FilledLines lines={file.lines} />}
        {file.notes.length > 0 && (
          <section class="step notes"><h3>Notes</h3><ul>{file.notes.map((note, place) => <li key={place}><span class="written">{note.text}</span> <span class="origin">{momentInWords(note.at)}</span></li>)}</ul></section>
        )}
        {'watched' in file.step && file.step.watched.length > 0 && <div class="step"><WatchNotices watched={file.step.watched} /></div>}
        <div class="step"><DifferentialLists differential={view.differential} /></div>
        <section class="step contact-card"><h3>Contact</h3><ContactRows service={service} view={view} /></section>
        {view.state === 'waiting' && <p class="step"><button type="button" class="main" disabled={sending} onClick={take}>Take this ticket<kbd>T</kbd></button></p>}
        {mine && (
          <SettleForm
            service={service} view={view} sending={sending} textRef={answerText}
            onSettle={(body: SettleTicket) => void change(() => service.settleTicket(ticket, body))}
          />
        )}
        {reply !== null && (
          <section class="step"><h3>The answer</h3><p class="written">{reply.problemName ?? (reply.outcome === 'not known' ? 'Not known' : 'Not a plant problem')}</p><p class="letter">{reply.text}</p></section>
        )}
        <details class="step history" open={view.state === 'settled'}>
          <summary>History</summary>
          <ol>{view.history.map((event, place) => <li key={place}><span class="origin">{momentInWords(event.at)}</span> {event.what}{event.by !== null && ` (${event.by})`}</li>)}</ol>
        </details>
      </>
    )
  }
}

/** The causes worth weighing with their reasons; the long tail behind one line. */
function DifferentialLists({ differential }: { readonly differential: readonly LikelyLine[] }) {
  const weighed = differential.filter(line => line.probability >= WORTH_WEIGHING)
  const tail = differential.filter(line => !weighed.includes(line))
  return (
    <>
      <LikelyList likely={weighed} title="What it could be" reasons />
      {tail.length > 0 && (
        <details>
          <summary>and {tail.length} more under {WORTH_WEIGHING * 100} %</summary>
          <ul>{tail.map(line => <li key={line.problem ?? ''}>{line.problem === null ? 'Something not on our list' : line.name} <span class="origin">{(line.probability * 100).toFixed(1)} in 100</span></li>)}</ul>
        </details>
      )}
    </>
  )
}

/** The contact on wish only: each reading is written down. */
function ContactRows({ service, view }: { readonly service: StaffService, readonly view: TicketView }) {
  const [shown, setShown] = useState<TicketContact | null>(null)
  if (!view.contactGiven) return <p>None given. The asker comes back by their private link.</p>
  const show = () => void service.ticketContact(view.ticket).then(reply => { if (reply.ok) setShown(reply.value) })
  if (shown === null) return <p><button type="button" class="second" onClick={show}>Show the contact details</button> <span class="hint">It is written down that you read them.</span></p>
  const { contact } = shown
  if (contact === null) return <p>Erased.</p>
  return (
    <ul>
      {contact.name !== undefined && <li>{contact.name}</li>}
      {contact.email !== undefined && <li><a href={`mailto:${contact.email}`}>{contact.email}</a></li>}
      {contact.phone !== undefined && <li><a href={`tel:${contact.phone.replace(/[^0-9+]/g, '')}`}>{contact.phone}</a></li>}
    </ul>
  )
}

function stateInWords(view: TicketView): string {
  switch (view.state) {
    case 'waiting': return `Waiting since ${momentInWords(view.openedAt)}`
    case 'taken': return `With ${view.takenBy ?? 'a specialist'}`
    case 'asked back': case 'answered by asker': case 'sent as a sample': return `${view.state}, with ${view.takenBy ?? 'nobody'}`
    case 'merged': return `Merged into ticket ${view.mergedInto ?? ''}`
    case 'settled': return `Settled${view.takenBy === null ? '' : ` by ${view.takenBy}`}`
  }
}

/** Below this share a cause is only named: reasons for and against it would hide those that matter. */
const WORTH_WEIGHING = 0.01
