import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { SettleReview as Review, SettleTicket, TicketView } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { CasebookWish } from './casebook-wish.js'

interface SettleReviewProps {
  readonly service: StaffService
  readonly view: TicketView
  /** False where the service sends no mail: then nobody is told. */
  readonly sendsMail: boolean
  /** The end as the asker reads it above the text. */
  readonly title: string
  readonly answer: Pick<SettleTicket, 'text' | 'outcome'>
  readonly sending: boolean
  readonly onBack: () => void
  readonly onSend: (body: SettleTicket) => void
}

/** The answer as the asker will read it, before it goes, with what the case leaves behind. The one place where it is sent. */
export function SettleReview({ service, view, sendsMail, title, answer, sending, onBack, onSend }: SettleReviewProps) {
  const amends = view.moves.includes('amend')
  const heading = useRef<HTMLHeadingElement>(null)
  const [review, setReview] = useState<Review | null>(null)
  const [keepWords, setKeepWords] = useState<string | null>(null)
  const [suggest, setSuggest] = useState<readonly ('entry phrase' | 'deciding check')[]>([])

  useLayoutEffect(() => heading.current?.focus(), [])
  useEffect(() => {
    void service.reviewTicket(view.ticket, { outcome: answer.outcome }).then(reply => { if (reply.ok) setReview(reply.value) })
  }, [])

  function send(): void {
    if (sending) return
    onSend({
      ...answer,
      ...(keepWords === null || keepWords.trim() === '' ? {} : { casebook: { words: keepWords.trim() } }),
      ...(suggest.length === 0 ? {} : { suggest: [...suggest] }),
    })
  }
  return (
    <section class="step review" aria-labelledby="review-title" onKeyDown={event => { if (event.key === 'Enter' && event.ctrlKey) send() }}>
      <h3 id="review-title" tabIndex={-1} ref={heading}>Read it once more</h3>
      <p class="hint">
        {amends ? 'The asker still reads the answer before. It stays here, among the earlier ones.' : 'Nothing has gone out yet.'}{' '}
        {!view.contactGiven ? 'The asker left no contact and reads it by their private link.' : sendsMail ? 'Whoever left an address is told, and reads it by their link.' : 'This service sends no mail: the asker reads it when they come back by their private link.'}
      </p>
      <div class="as-read">
        <p class="kicker">The specialist’s answer</p>
        <h4 class="written">{title}</h4>
        <p class="letter">{answer.text}</p>
      </div>
      {review !== null && <CasebookWish review={review} words={keepWords} onWords={setKeepWords} />}
      {review !== null && review.suggestions.length > 0 && (
        <fieldset class="leaves">
          <legend>Tell whoever writes the trees</legend>
          {review.suggestions.map(suggestion => (
            <label class="check-pick" key={suggestion.kind}>
              <input
                type="checkbox" checked={suggest.includes(suggestion.kind)}
                onChange={event => setSuggest(event.currentTarget.checked ? [...suggest, suggestion.kind] : suggest.filter(kind => kind !== suggestion.kind))}
              />
              <span>{suggestion.text}</span>
            </label>
          ))}
        </fieldset>
      )}
      <p class="row">
        <button type="button" class="main" disabled={sending} onClick={send}>{sending ? 'Sending …' : amends ? 'Send the changed answer' : 'Send the answer and settle'}<kbd>Ctrl Enter</kbd></button>
        <button type="button" class="quiet" disabled={sending} onClick={onBack}>Back to the writing</button>
      </p>
    </section>
  )
}
