import { useLayoutEffect, useRef } from 'preact/hooks'

interface SettleReviewProps {
  readonly title: string
  readonly text: string
  readonly contactGiven: boolean
  readonly sending: boolean
  readonly onBack: () => void
  readonly onSend: () => void
}

/** The answer as the asker will read it, before it goes: the one place where it is sent. */
export function SettleReview({ title, text, contactGiven, sending, onBack, onSend }: SettleReviewProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useLayoutEffect(() => heading.current?.focus(), [])
  return (
    <section
      class="step review" aria-labelledby="review-title"
      onKeyDown={event => { if (event.key === 'Enter' && event.ctrlKey && !sending) onSend() }}
    >
      <h3 id="review-title" tabIndex={-1} ref={heading}>Read it once more</h3>
      <p class="hint">Nothing has gone out yet. {contactGiven ? 'The asker is told that there is an answer, and reads it by their link.' : 'The asker left no contact and reads it by their private link.'}</p>
      <div class="as-read">
        <p class="kicker">The specialist’s answer</p>
        <h4 class="written">{title}</h4>
        <p class="letter">{text}</p>
      </div>
      <p class="row">
        <button type="button" class="main" disabled={sending} onClick={onSend}>{sending ? 'Sending …' : 'Send the answer and settle'}<kbd>Ctrl Enter</kbd></button>
        <button type="button" class="quiet" disabled={sending} onClick={onBack}>Back to the writing</button>
      </p>
    </section>
  )
}
