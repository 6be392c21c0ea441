import type { ComponentChildren, Ref } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { CaseView, CheckCard } from '../../../shared/index.js'
import { AskedBackPart } from './asked-back.js'
import { dayInWords } from '../wording/day.js'
import { useSpoken } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'

type Ticket = NonNullable<CaseView['ticket']>

interface AfterHandOverProps {
  readonly ticket: Ticket
  /** Address of the page that shows this sheet. */
  readonly address: string
  readonly answerWithinHours: number | null
  /** False where the service sends no mail: then the link is the way back. */
  readonly sendsMail: boolean
  /** True while a check is still open below. */
  readonly mayGoOn: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly onLook: () => void
  readonly onLookAt: (check: CheckCard) => void
  /** Sends words of the asker's own; left out where the sheet takes none now. */
  readonly onWrite: ((words: string) => void) | undefined
  /** How many times the asker has written so far. */
  readonly wordsSoFar: number
  readonly disabled: boolean
  /** The photos of the sheet, with the way to add one. */
  readonly photos: ComponentChildren
}

/** What stands on the sheet once a specialist has it: when to expect an answer, the way back, then the answer. */
export function AfterHandOver(props: AfterHandOverProps) {
  const { ticket, address, answerWithinHours, sendsMail, mayGoOn, headingRef, onLook, onLookAt, onWrite, wordsSoFar, disabled, photos } = props
  const words = useSheetWording().after
  const { language } = useSpoken()
  const answered = ticket.reply !== null
  useEffect(() => {
    if (answered) return
    const look = () => { if (document.visibilityState === 'visible') onLook() }
    const timer = setInterval(look, LOOK_EVERY_MS)
    document.addEventListener('visibilitychange', look)
    return () => { clearInterval(timer); document.removeEventListener('visibilitychange', look) }
  }, [answered, onLook])

  if (ticket.reply !== null) {
    const { reply } = ticket
    return (
      <div class="step reply">
        <p class="kicker">{words.answered}</p>
        <h3 class="step-title" tabIndex={-1} ref={headingRef}>{words.outcome[reply.outcome](reply.problemName)}</h3>
        <div class="letter">{reply.text.split(/\n{2,}/).map((paragraph, n) => <p key={n}>{paragraph}</p>)}</div>
        <p class="hint">{words.answeredOn(dayInWords(reply.at, language))}</p>
        <PrivateLink address={address} />
      </div>
    )
  }
  const question = ticket.askedBack
  // While it is the asker's turn no time of ours runs.
  const awaitsAsker = question !== null && !question.answered
  const heading = ticket.sample !== null && ticket.state === 'sent as a sample' ? words.sample : ticket.state === 'waiting' ? words.waiting : words.taken
  return (
    <>
    {question !== null && <AskedBackPart question={question} headingRef={headingRef} onLookAt={onLookAt} onWrite={onWrite} wordsSoFar={wordsSoFar} disabled={disabled} />}
    <div class="step waiting">
      {question === null && <h3 class="step-title" tabIndex={-1} ref={headingRef}>{heading}</h3>}
      {ticket.sample !== null && <p>{words.sampleNumber(ticket.sample.number)}</p>}
      {answerWithinHours !== null && !awaitsAsker && <p>{words.within(answerWithinHours)}</p>}
      <p>{!ticket.contactGiven ? words.noContact : sendsMail ? words.contact : words.contactNoMail}</p>
      <PrivateLink address={address} />
      <p><button type="button" class="quiet" onClick={onLook}>{words.look}</button></p>
      {mayGoOn && <p>{words.goOn}</p>}
      {photos}
    </div>
    </>
  )
}

function PrivateLink({ address }: { readonly address: string }) {
  const words = useSheetWording().after
  const [said, setSaid] = useState('')
  const field = useRef<HTMLInputElement>(null)
  async function copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(address)
      setSaid(words.copied)
    } catch {
      // A host page may not allow the clipboard: then the link is marked for copying by hand.
      field.current?.focus()
      field.current?.select()
      setSaid(words.copyByHand)
    }
  }
  return (
    <div class="private-link">
      <label for="private-link">{words.link}</label>
      <div class="row">
        <input id="private-link" ref={field} type="text" readOnly value={address} onFocus={event => event.currentTarget.select()} />
        <button type="button" class="second" onClick={() => void copy()}>{words.copy}</button>
      </div>
      <p class="hint"><span role="status">{said}</span> {words.keepPrivate}</p>
    </div>
  )
}

const LOOK_EVERY_MS = 30_000
