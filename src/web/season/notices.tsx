import type { WatchNotice } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'

interface NoticesProps {
  readonly notices: readonly WatchNotice[]
  readonly mayWrite: boolean
  readonly onAside: (notice: string) => void
}

/** First reports of watch problems that nobody has put aside yet; nothing while there are none. */
export function Notices({ notices, mayWrite, onAside }: NoticesProps) {
  const open = notices.filter(({ seen }) => seen === null)
  if (open.length === 0) return null
  return (
    <section class="flag report" aria-labelledby="notices-title">
      <h2 id="notices-title" class="flag-title">First report of the year</h2>
      <ul>
        {open.map(one => (
          <li key={one.notice}>
            <b>{one.name}</b> in {one.districtName ?? 'a place not said'}, {dayInWords(one.at)}: {one.basis === 'settled' ? 'settled by a specialist' : 'concluded by the guide, not yet looked at'}.
            {!one.stands && ' Since then the case was settled otherwise.'}
            {one.ticket !== null && <> <a href={`/bench#ticket/${one.ticket}`}>Ticket {one.ticket}</a></>}
            {mayWrite && <> <button type="button" class="quiet" onClick={() => onAside(one.notice)}>Put aside</button></>}
          </li>
        ))}
      </ul>
    </section>
  )
}
