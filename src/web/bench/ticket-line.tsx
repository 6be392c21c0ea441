import type { Ref } from 'preact'
import type { TicketRow } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import { otherLanguage } from './asker-language.js'
import { isUrgentStill } from './urgent-still.js'

interface TicketLineProps {
  readonly row: TicketRow
  readonly number: number
  readonly districtName: string
  readonly linkRef: Ref<HTMLAnchorElement>
  readonly onFocus: () => void
}

/** One ticket in a list: why it stands here, the words, and the little one needs to choose. */
export function TicketLine({ row, number, districtName, linkRef, onFocus }: TicketLineProps) {
  const language = otherLanguage(row.language)
  return (
    <li class={isUrgentStill(row) ? 'ledger-row urgent' : 'ledger-row'}>
      <span class="number">{number}</span>
      <div>
        <p class="why">{isUrgentStill(row) && <b class="mark">Urgent</b>} {row.late && <b class="mark">Late</b>} {row.why}</p>
        <a href={`#ticket/${row.ticket}`} ref={linkRef} data-ticket={row.ticket} lang={row.language} onFocus={onFocus}>{shortened(row.words)}</a>
      </div>
      <p class="facts">
        <span>Ticket {row.ticket}</span>
        {row.hostName === null ? <span>plant not settled{row.plantGuesses.length > 0 && `, perhaps ${row.plantGuesses.join(' or ')}`}</span> : <span class="written">{row.hostName}</span>}
        {row.problemName !== null && <span>{row.state === 'settled' ? '' : 'likeliest: '}{row.problemName}</span>}
        {language !== null && <span>asked in {language}</span>}
        <span>{districtName}</span>
        {row.dueAt !== null && <span>answer by {momentInWords(row.dueAt)}</span>}
        {row.state !== 'waiting' && <span>{row.state}{row.takenBy !== null && `, with ${row.takenBy}`}</span>}
      </p>
    </li>
  )
}

function shortened(words: string): string {
  return words.length > 180 ? `${words.slice(0, 179)}…` : words
}
