import type { TicketRow, TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'

interface KinTicketsProps {
  readonly view: TicketView
  readonly sending: boolean
  readonly onUnlink: (ticket: string) => void
}

/** Tickets that have to do with this one: repeats merged into it, related ones, and others of the same asker. */
export function KinTickets({ view, sending, onUnlink }: KinTicketsProps) {
  const { related, merged, sameAsker, mergedInto } = view
  if (related.length + merged.length + sameAsker.length === 0 && mergedInto === null) return null
  return (
    <section class="step kin">
      <h3>Other tickets</h3>
      {mergedInto !== null && <p>This one is a repeat of <a href={`#ticket/${mergedInto}`}>ticket {mergedInto}</a>; its asker reads the answer given there.</p>}
      <KinGroup title="Repeats merged into this one" rows={merged} />
      <KinGroup title="Related" rows={related} press={row => <button type="button" class="quiet" disabled={sending} aria-label={`Not related: ticket ${row.ticket}`} onClick={() => onUnlink(row.ticket)}>Not related</button>} />
      <KinGroup title="Left with the same address or telephone" rows={sameAsker} />
    </section>
  )
}

function KinGroup({ title, rows, press }: { readonly title: string, readonly rows: readonly TicketRow[], readonly press?: (row: TicketRow) => preact.JSX.Element }) {
  if (rows.length === 0) return null
  return (
    <>
      <h4>{title}</h4>
      <ul>
        {rows.map(row => (
          <li key={row.ticket} class="kin-row">
            <a href={`#ticket/${row.ticket}`}>Ticket {row.ticket}</a> <span class="words-of">{shortened(row.words)}</span>
            <span class="origin">{row.hostName ?? 'plant not settled'}, {row.state}, {momentInWords(row.openedAt)}</span>
            {press?.(row)}
          </li>
        ))}
      </ul>
    </>
  )
}

function shortened(words: string): string {
  return words.length > 90 ? `${words.slice(0, 89)}…` : words
}
