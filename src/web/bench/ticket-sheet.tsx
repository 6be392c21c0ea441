import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { RegionView, TicketView } from '../../../shared/index.js'
import { forgetFields } from '../case/kept-fields.js'
import { FlagCards } from '../case/flag-cards.js'
import { SimilarSettled } from '../case/similar-settled.js'
import { KeyBoard, useKeys, type KeyAction } from '../sheet/keys.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'
import type { TicketChangeBodies } from '../wire/ticket-service.js'
import { AskedLines } from './asked-lines.js'
import { ContactCard } from './contact-card.js'
import { Gathered } from './gathered.js'
import { HistoryLines } from './history-lines.js'
import { keepDraft } from './kept-draft.js'
import { KinTickets } from './kin-tickets.js'
import { formPlace, OpenForm } from './open-form.js'
import { PhotoStrip } from './photo-strip.js'
import { ReplyCards } from './reply-cards.js'
import { stateInWords } from './state-in-words.js'
import { ticketActions, type FormName, type TicketAction } from './ticket-actions.js'
import { useTicket } from './use-ticket.js'
import { WeighedList } from './weighed-list.js'
import { isUrgentStill } from './urgent-still.js'

interface TicketSheetProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly ticket: string
  /** Name of the specialist at the bench. */
  readonly me: string
  readonly onList: () => void
}

/** One ticket as one sheet: everything gathered, what it could be and why, what was done with it, and one part open to be filled in. */
export function TicketSheet({ service, region, ticket, me, onList }: TicketSheetProps) {
  const { view, before, fault, news, sending, change } = useTicket(service, ticket)
  const [form, setForm] = useState<FormName | null>(null)
  const title = useRef<HTMLHeadingElement>(null)
  const toTitle = () => title.current?.focus()
  useEffect(() => { if (view !== null) toTitle() }, [view === null])

  // The focus never falls off the sheet: keys act only where it is.
  const wasOpen = useRef(false)
  useLayoutEffect(() => {
    // Before the next key: one pressed between the form's going and a later moment would be lost.
    if (form === null && wasOpen.current) toTitle()
    wasOpen.current = form !== null
  }, [form])
  const leave = () => {
    setForm(null)
    setTimeout(() => { if (document.activeElement === document.body) toTitle() })
  }
  async function send<Path extends keyof TicketChangeBodies>(path: Path, body: TicketChangeBodies[Path]): Promise<void> {
    if (!await change(path, body)) return
    if (path === 'settle' || path === 'amend') keepDraft(ticket, null)
    else if (form !== null) forgetFields(formPlace(ticket, form))
    leave()
  }
  const actions = view === null ? [] : ticketActions(view)
  const run = ({ does }: TicketAction) => { if (does.kind === 'open') setForm(does.form); else void send(does.path, undefined) }
  const keyed: KeyAction[] = [
    ...actions.map(action => ({ key: action.key, words: action.words, run: () => run(action) })),
    { key: 'L', words: 'List of tickets', run: onList },
  ]
  const keys = useKeys(keyed, leave)

  return (
    <div class="bench" data-keys>
      <section class="sheet" aria-labelledby="ticket-title">
        <header class="sheet-head">
          <h2 id="ticket-title" tabIndex={-1} ref={title}>Ticket {ticket}</h2>
          {view !== null && <p class="sheet-by">{stateInWords(view)}</p>}
        </header>
        <p class="news" role="status">{news}</p>
        {fault !== null && <p class="trouble" role="alert">{fault}</p>}
        {view === null ? fault === null && <p class="step">Fetching the ticket …</p> : (
          <>
            <WhyHere view={view} />
            <FlagCards cards={view.case.cards} newCards={[]} />
            <Gathered view={view} region={region} />
            <PhotoStrip view={view} />
            <AskedLines view={view} />
            <div class="step"><WeighedList differential={view.differential} before={before?.differential ?? null} /></div>
            <SimilarSettled service={service} link={view.case.link} revision={view.case.revision} region={region} />
            <ContactCard service={service} view={view} />
            <KinTickets view={view} sending={sending} onUnlink={other => void send('unlink', { ticket: other })} />
            <ReplyCards view={view} />
            {form === null
              ? (
                <div class="step moves" role="group" aria-label="What to do with it">
                  <p class="row">{actions.map((action, place) => <button type="button" key={action.key} class={place === 0 ? 'main' : 'second'} disabled={sending} onClick={() => run(action)}>{action.words}<kbd>{action.key}</kbd></button>)}</p>
                </div>
              )
              : <OpenForm key={form} form={form} service={service} view={view} me={me} sendsMail={region?.sendsMail ?? false} sending={sending} onSend={(path, body) => void send(path, body)} onLeave={leave} />}
            <HistoryLines view={view} />
          </>
        )}
      </section>
      <KeyBoard actions={keyed} keys={keys} />
    </div>
  )
}

/** Why it stands where it stands in the list, and until when it should be answered. */
function WhyHere({ view }: { readonly view: TicketView }) {
  return (
    <div class="step why-line">
      <p>
        {isUrgentStill(view) && <b class="mark">Urgent</b>} {view.why}
        {view.dueAt !== null && <span class={view.late ? 'due late' : 'due'}> {view.late ? 'Should have been answered by' : 'To be answered by'} {momentInWords(view.dueAt)}</span>}
      </p>
    </div>
  )
}
