import { useEffect, useRef, useState } from 'preact/hooks'
import type { TicketView } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { newestFirst } from '../wire/newest-first.js'
import type { TicketChangeBodies } from '../wire/ticket-service.js'
import { inWords } from '../wording/in-words.js'
import { followTickets } from './follow-tickets.js'

export interface TicketInHand {
  readonly view: TicketView | null
  /** The view before the last change of the evidence, to show what moved. */
  readonly before: TicketView | null
  /** What went wrong last, or null. */
  readonly fault: string | null
  /** What others did meanwhile, said quietly. */
  readonly news: string
  readonly sending: boolean
  /** True when the service took the change. */
  change<Path extends keyof TicketChangeBodies>(path: Path, body: TicketChangeBodies[Path]): Promise<boolean>
}

/** One ticket as it stands, kept up to date while it is looked at. Nothing here moves the focus. */
export function useTicket(service: StaffService, ticket: string): TicketInHand {
  const [view, setView] = useState<TicketView | null>(null)
  const [before, setBefore] = useState<TicketView | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [news, setNews] = useState('')
  const [sending, setSending] = useState(false)
  const shown = useRef<TicketView | null>(null)
  const busy = useRef(false)
  const order = useRef(newestFirst())

  function show(next: TicketView, byOthers: boolean): void {
    const last = shown.current
    if (last !== null && last.case.revision !== next.case.revision) setBefore(last)
    if (byOthers && last !== null) {
      const happened = next.history.slice(last.history.length)
      const lines = next.case.lines.length - last.case.lines.length
      if (happened.length > 0) setNews(happened.map(event => event.by === null ? event.what : `${event.by}: ${event.what}`).join('. '))
      else if (last.case.revision !== next.case.revision) setNews(lines > 0 ? 'The asker filled in another line.' : 'The asker’s sheet has changed.')
    }
    shown.current = next
    setView(next)
  }

  async function look(byOthers: boolean): Promise<void> {
    const isNews = order.current.ask()
    const reply = await service.ticket(ticket)
    // A later look, or a change of our own under way or done since, is the newer one.
    if (busy.current) return
    if (!reply.ok) {
      if (!byOthers && shown.current === null) setFault(inWords(reply))
    } else if (isNews()) {
      if (shown.current === null || !byOthers) setFault(null)
      show(reply.value, byOthers)
    }
  }

  useEffect(() => {
    void look(false)
    return followTickets(changed => { if (changed === null || changed === ticket) void look(true) })
  }, [ticket])

  return {
    view, before, fault, news, sending,
    async change(path, body) {
      if (busy.current) return false
      busy.current = true
      setSending(true)
      const reply = await service.changeTicket(ticket, path, body)
      busy.current = false
      order.current.overtake()
      setSending(false)
      setFault(reply.ok ? null : inWords(reply))
      if (reply.ok) { show(reply.value, false); setNews('') }
      // Somebody else may have been quicker, or the change went through and its reply was lost: show how it stands.
      else void look(true)
      return reply.ok
    },
  }
}
