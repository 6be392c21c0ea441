import { useEffect, useRef, useState } from 'preact/hooks'
import type { RegionView, TicketList } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'
import { KeyBoard, useKeys, type KeyAction } from '../sheet/keys.js'

export type TicketRow = TicketList['tickets'][number]
export type ListedState = TicketRow['state']

interface TicketListPageProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly state: ListedState
  readonly onState: (state: ListedState) => void
  readonly onOpen: (ticket: string) => void
}

/** The waiting tickets in order of need, each with the reason for its place; and those taken or settled. */
export function TicketListPage({ service, region, state, onState, onOpen }: TicketListPageProps) {
  const [rows, setRows] = useState<readonly TicketRow[] | null>(null)
  const [lost, setLost] = useState(false)
  const [at, setAt] = useState(0)
  const links = useRef<(HTMLAnchorElement | null)[]>([])

  useEffect(() => {
    let here = true
    const look = () => {
      if (document.visibilityState !== 'visible') return
      void service.tickets(state).then(reply => {
        if (!here) return
        setLost(!reply.ok)
        if (reply.ok) setRows(reply.value.tickets)
      })
    }
    setRows(null)
    setAt(0)
    look()
    const timer = setInterval(look, LOOK_EVERY_MS)
    document.addEventListener('visibilitychange', look)
    return () => { here = false; clearInterval(timer); document.removeEventListener('visibilitychange', look) }
  }, [service, state])

  const count = rows?.length ?? 0
  const moveTo = (place: number) => {
    const next = Math.max(0, Math.min(count - 1, place))
    setAt(next)
    links.current[next]?.focus()
  }
  const actions: KeyAction[] = [
    { key: 'D', words: 'Down to the next ticket', run: () => moveTo(document.activeElement === links.current[at] ? at + 1 : at) },
    { key: 'U', words: 'Up to the one before', run: () => moveTo(at - 1) },
    ...states.filter(row => row.state !== state).map(row => ({ key: row.key, words: `Show the ${row.words.toLowerCase()}`, run: () => onState(row.state) })),
  ]
  const keys = useKeys(actions, () => {})
  const title = states.find(row => row.state === state)?.words ?? ''
  const districtName = (district: string | null) => region?.districts.find(row => row.district === district)?.name ?? district ?? 'not said'

  return (
    <div class="bench">
      <section class="sheet ledger" aria-labelledby="ledger-title">
        <header class="ledger-head">
          <h2 id="ledger-title">{title} {rows !== null && <span class="hint">({count})</span>}</h2>
          <nav class="row" aria-label="Which tickets">
            {states.map(row => (
              <button type="button" key={row.state} class="second" aria-current={row.state === state ? 'true' : undefined} onClick={() => onState(row.state)}>{row.words}<kbd>{row.key}</kbd></button>
            ))}
          </nav>
        </header>
        {lost && <p class="fault ledger-note" role="status">We cannot reach the service just now. The list may be old.</p>}
        {rows === null && !lost && <p class="ledger-note">Fetching the tickets …</p>}
        {rows !== null && count === 0 && <p class="ledger-note">{state === 'waiting' ? 'Nobody is waiting.' : 'None.'}</p>}
        <ol class="ledger-rows">
          {rows?.map((row, place) => (
            <li key={row.ticket} class={row.urgent ? 'ledger-row urgent' : 'ledger-row'}>
              <span class="number">{place + 1}</span>
              <div>
                <p class="why">{row.urgent && <b class="mark">Urgent</b>} {row.why}</p>
                <a href={`#ticket/${row.ticket}`} ref={link => { links.current[place] = link }} onFocus={() => setAt(place)} onClick={event => { event.preventDefault(); onOpen(row.ticket) }}>{shortened(row.words)}</a>
              </div>
              <p class="facts"><span class="written">{row.hostName ?? 'plant not named'}</span><span>{districtName(row.district)}</span><span>{momentInWords(row.openedAt)}</span>{row.takenBy !== null && <span>with {row.takenBy}</span>}</p>
            </li>
          ))}
        </ol>
      </section>
      <KeyBoard actions={actions} keys={keys} />
    </div>
  )
}

function shortened(words: string): string {
  return words.length > 180 ? `${words.slice(0, 179)}…` : words
}

const states: readonly { readonly state: ListedState, readonly words: string, readonly key: string }[] = [
  { state: 'waiting', words: 'Waiting', key: '1' },
  { state: 'taken', words: 'Taken', key: '2' },
  { state: 'settled', words: 'Settled', key: '3' },
]

const LOOK_EVERY_MS = 30_000
