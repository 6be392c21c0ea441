import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { RegionView } from '../../../shared/index.js'
import { KeyBoard, useKeys, type KeyAction } from '../sheet/keys.js'
import type { StaffService } from '../wire/staff-service.js'
import type { TicketWanted } from '../wire/ticket-service.js'
import { FindForm } from './find-form.js'
import { TicketLine } from './ticket-line.js'
import { foundPile, piles, wantedIn, type PileName } from './ticket-piles.js'
import { usePile } from './use-pile.js'

/** What the list shows; kept while a ticket is looked at. */
export interface ListChoice {
  readonly pile: PileName
  readonly sought: Partial<TicketWanted>
}

interface TicketListPageProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly me: string
  readonly choice: ListChoice
  readonly onChoice: (choice: ListChoice) => void
}

/** The tickets of a pile in order of need, each with the reason for its place. New ones appear by themselves and take no focus. */
export function TicketListPage({ service, region, me, choice, onChoice }: TicketListPageProps) {
  const { pile, sought } = choice
  const { rows, lost, news } = usePile(service, wantedIn(pile, me, sought))
  const [finding, setFinding] = useState(pile === 'found')
  const [current, setCurrent] = useState<string | null>(null)
  const links = useRef(new Map<string, HTMLAnchorElement>())
  const focused = useRef<string | null>(null)
  const title = useRef<HTMLHeadingElement>(null)

  // A line that moves up or down in the document loses the focus: give it back to the same ticket.
  useLayoutEffect(() => {
    if (focused.current !== null && document.activeElement === document.body) links.current.get(focused.current)?.focus({ preventScroll: true })
  }, [rows])

  const toTitle = () => title.current?.focus({ preventScroll: true })
  // Keys act only where the focus is: it starts on the sheet, and never falls off it.
  useLayoutEffect(toTitle, [])
  const leaveFinding = () => {
    setFinding(false)
    setTimeout(() => { if (document.activeElement === document.body) toTitle() })
  }

  const order = rows?.map(row => row.ticket) ?? []
  function step(by: number): void {
    const at = current === null ? -1 : order.indexOf(current)
    const onIt = at >= 0 && document.activeElement === links.current.get(order[at] ?? '')
    const next = order[Math.max(0, Math.min(order.length - 1, onIt ? at + by : Math.max(0, at)))]
    if (next !== undefined) links.current.get(next)?.focus()
  }
  const show = (next: PileName) => { setCurrent(null); focused.current = null; leaveFinding(); onChoice({ pile: next, sought }) }
  const actions: KeyAction[] = [
    { key: 'D', words: 'Down to the next ticket', run: () => step(1) },
    { key: 'U', words: 'Up to the one before', run: () => step(-1) },
    ...piles.map(row => ({ key: row.key, words: row.words, run: () => show(row.name) })),
    { key: 'F', words: 'Find tickets', run: () => setFinding(true) },
  ]
  const keys = useKeys(actions, leaveFinding)
  const shown = piles.find(row => row.name === pile) ?? foundPile
  const districtName = (district: string | null) => region?.districts.find(row => row.district === district)?.name ?? district ?? 'place not said'

  return (
    <div class="bench" data-keys>
      <section class="sheet ledger" aria-labelledby="ledger-title">
        <header class="ledger-head">
          <h2 id="ledger-title" tabIndex={-1} ref={title}>{shown.words} {rows !== null && <span class="hint">({rows.length})</span>}</h2>
          <nav class="row" aria-label="Which tickets">
            {piles.map(row => (
              <button type="button" key={row.name} class="second" aria-current={row.name === pile ? 'true' : undefined} onClick={() => show(row.name)}>{row.words}<kbd>{row.key}</kbd></button>
            ))}
            <button type="button" class="second" aria-expanded={finding} onClick={() => setFinding(!finding)}>Find<kbd>F</kbd></button>
          </nav>
        </header>
        {finding && <FindForm service={service} region={region} sought={sought} onFind={next => { onChoice({ pile: 'found', sought: next }); setTimeout(toTitle) }} onLeave={leaveFinding} />}
        <p class="news" role="status">{news}</p>
        {lost && <p class="fault ledger-note" role="status">We cannot reach the service just now. The list may be old.</p>}
        {rows === null && !lost && <p class="ledger-note">Fetching the tickets …</p>}
        {rows !== null && rows.length === 0 && <p class="ledger-note">{shown.none}</p>}
        <ol class="ledger-rows" onFocusOut={() => { focused.current = null }}>
          {rows?.map((row, place) => (
            <TicketLine
              key={row.ticket} row={row} number={place + 1} districtName={districtName(row.district)}
              linkRef={link => { if (link === null) links.current.delete(row.ticket); else links.current.set(row.ticket, link) }}
              onFocus={() => { setCurrent(row.ticket); focused.current = row.ticket }}
            />
          ))}
        </ol>
      </section>
      <KeyBoard actions={actions} keys={keys} />
    </div>
  )
}
