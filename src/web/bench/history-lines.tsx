import type { TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'

/** Notes for colleagues, and everything that ever happened to the ticket. */
export function HistoryLines({ view }: { readonly view: TicketView }) {
  return (
    <>
      {view.colleagueNotes.length > 0 && (
        <section class="step colleague-notes">
          <h3>For colleagues only</h3>
          <ul>{view.colleagueNotes.map(note => <li key={note.at}><p class="letter">{note.text}</p><p class="origin">{note.by}, {momentInWords(note.at)}</p></li>)}</ul>
        </section>
      )}
      <details class="step history" open={view.state === 'settled'}>
        <summary>History</summary>
        <ol>{view.history.map((event, place) => <li key={place}><span class="origin">{momentInWords(event.at)}</span> {event.what} <span class="origin">{event.by ?? 'the asker'}</span></li>)}</ol>
      </details>
    </>
  )
}
