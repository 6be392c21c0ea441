import { useEffect, useRef, useState } from 'preact/hooks'
import type { TicketList, TicketRow } from '../../../shared/index.js'
import { newestFirst } from '../wire/newest-first.js'
import type { Reply } from '../wire/reply.js'
import type { StaffService } from '../wire/staff-service.js'
import type { TicketWanted } from '../wire/ticket-service.js'
import { followTickets } from './follow-tickets.js'

interface PileInHand {
  /** Null while they are fetched for the first time. */
  readonly rows: readonly TicketRow[] | null
  readonly lost: boolean
  /** What came since the list was opened, said quietly. */
  readonly news: string
}

/** The tickets that fit, kept up to date while they are looked at. */
export function usePile(service: StaffService, wanted: Partial<TicketWanted>): PileInHand {
  const [rows, setRows] = useState<readonly TicketRow[] | null>(null)
  const [lost, setLost] = useState(false)
  const [news, setNews] = useState('')
  const known = useRef<ReadonlySet<string> | null>(null)
  const key = JSON.stringify(wanted)

  useEffect(() => {
    let here = true
    const order = newestFirst()
    const look = () => {
      const isNews = order.ask()
      void service.tickets(wanted).then(reply => { if (here && (!reply.ok || isNews())) take(reply) })
    }
    const take = (reply: Reply<TicketList>) => {
      setLost(!reply.ok)
      if (!reply.ok) return
      const fresh = known.current === null ? 0 : reply.value.tickets.filter(row => known.current?.has(row.ticket) === false).length
      if (fresh > 0) setNews(fresh === 1 ? 'One more ticket has come.' : `${fresh} more tickets have come.`)
      known.current = new Set(reply.value.tickets.map(row => row.ticket))
      setRows(reply.value.tickets)
    }
    known.current = null
    setRows(null)
    setNews('')
    look()
    const stop = followTickets(look)
    return () => { here = false; stop() }
  }, [service, key])

  return { rows, lost, news }
}
