import type { TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import { outcomeInWords } from './outcomes.js'

/** The answer that stands, and those changed since: nothing that an asker ever read is lost. */
export function ReplyCards({ view: { replies, casebook } }: { readonly view: TicketView }) {
  const standing = replies.filter(reply => reply.stands)
  const earlier = replies.filter(reply => !reply.stands)
  if (replies.length === 0) return null
  const card = (reply: TicketView['replies'][number]) => (
    <div class={reply.stands ? 'as-read' : 'as-read no-more'} key={reply.at}>
      <p class="kicker">{reply.stands ? 'The answer' : 'An earlier answer, changed or taken back since'} <span class="origin">{reply.by ?? 'somebody'}, {momentInWords(reply.at)}</span></p>
      <h4 class="written">{outcomeInWords(reply.outcome, reply.problemName)}</h4>
      <p class="letter">{reply.text}</p>
    </div>
  )
  return (
    <section class="step replies" aria-label="Answers">
      {standing.map(card)}
      {casebook !== null && <p class="origin">Kept for the casebook by {casebook.by}, {momentInWords(casebook.at)}.</p>}
      {earlier.length > 0 && <details><summary>{earlier.length === 1 ? 'An earlier answer' : `${earlier.length} earlier answers`}</summary>{earlier.map(card)}</details>}
    </section>
  )
}
