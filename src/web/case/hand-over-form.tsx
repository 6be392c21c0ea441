import type { ComponentChildren, Ref } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { givenContact } from '../../../shared/given-contact.js'
import type { HandOver } from '../../../shared/index.js'
import { useKeptFields } from './kept-fields.js'
import { LONGEST_WORDS } from './longest-words.js'
import { onTheWay, type PhotosOnTheWay } from './photo-uploads.js'
import { useSheetWording } from '../wording/sheet-language.js'

interface HandOverFormProps {
  /** The case, to keep what is written here while the form is left. */
  readonly link: string
  readonly disabled: boolean
  readonly sending: boolean
  /** False where the service sends no mail: then none is promised. */
  readonly sendsMail: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  /** Puts the focus in the first field, for those who work by keys. */
  readonly startInField?: boolean
  /** Why the case is handed over, above the form. */
  readonly children?: ComponentChildren
  /** The photos of the sheet, with the way to add one. */
  readonly photos?: ComponentChildren
  /** What of the photos is not here yet: the hand-over waits for it, or asks. */
  readonly photosOnTheWay?: PhotosOnTheWay
  readonly onHandOver: (body: Omit<HandOver, 'revision'>) => void
  readonly onLeave?: (() => void) | undefined
}

/** The way to a specialist: contact if the asker likes, a note if there is more to say. */
export function HandOverForm({ link, disabled, sending, sendsMail, headingRef, startInField = false, children, photos, photosOnTheWay = NONE_ON_THE_WAY, onHandOver, onLeave }: HandOverFormProps) {
  const { handOver: words, photos: photoWords } = useSheetWording()
  // Contact details stay with the screen: the next person at this browser must not find them.
  const [{ name, email, phone, callTime, note }, keep] = useKeptFields(handOverPlace(link), NOTHING, 'screen')
  const [faults, setFaults] = useState<{ email?: string, phone?: string }>({})

  /** A finished hand-over that waits for photos. */
  const [waiting, setWaiting] = useState<Omit<HandOver, 'revision'> | null>(null)
  const { underWay, failed, share } = photosOnTheWay

  const firstField = useRef<HTMLInputElement>(null)
  useLayoutEffect(() => { if (startInField) firstField.current?.focus() }, [startInField])

  function submit(event: Event): void {
    event.preventDefault()
    const found = {
      ...(email.trim() !== '' && !looksLikeEmail(email) ? { email: words.badEmail } : {}),
      ...(phone.trim() !== '' && !looksLikePhone(phone) ? { phone: words.badPhone } : {}),
    }
    setFaults(found)
    if (found.email !== undefined || found.phone !== undefined) return
    const contact = givenContact({ name, email, phone, callTime })
    const body = { ...(contact === null ? {} : { contact }), ...(note.trim() === '' ? {} : { note: note.trim() }) }
    if (underWay === 0 && failed === 0) onHandOver(body)
    else setWaiting(body)
  }
  // Photos that have all arrived let it go by itself; one that failed is asked about.
  useEffect(() => {
    if (waiting === null || underWay > 0 || failed > 0) return
    setWaiting(null)
    onHandOver(waiting)
  }, [waiting, underWay, failed])

  const field = (label: string, key: keyof typeof FIELDS, value: string, fault?: string) => (
    <div class="field">
      <label for={`contact-${key}`}>{label} <span class="hint">{words.optional}</span></label>
      <input
        id={`contact-${key}`} list={undefined} ref={key === 'name' ? firstField : null} value={value} {...FIELDS[key]}
        aria-invalid={fault !== undefined} {...(fault === undefined ? {} : { 'aria-describedby': `fault-${key}` })}
        onInput={event => keep({ [key]: event.currentTarget.value })}
      />
      {fault !== undefined && <p class="fault" id={`fault-${key}`} role="alert">{fault}</p>}
    </div>
  )

  return (
    <form class="step hand-over" noValidate onSubmit={submit}>
      <h3 class="step-title" tabIndex={-1} ref={headingRef}>{words.title}</h3>
      {children}
      <p>{words.lead}</p>
      <fieldset>
        <legend>{sendsMail ? words.contactLead : words.contactLeadNoMail}</legend>
        <div class="contact">
          {field(words.name, 'name', name)}
          {field(words.email, 'email', email, faults.email)}
          {field(words.phone, 'phone', phone, faults.phone)}
          {field(words.callTime, 'callTime', callTime)}
        </div>
        <p class="hint">{words.privacy}</p>
      </fieldset>
      <div class="field">
        <label for="hand-over-note">{words.note}</label>
        <textarea id="hand-over-note" rows={3} maxLength={LONGEST_WORDS} value={note} onInput={event => keep({ note: event.currentTarget.value })} />
      </div>
      {photos}
      {waiting !== null && (
        <div class="waits">
          {underWay > 0
            ? <p role="status">{photoWords.onTheWay(Math.round(share * 100))}</p>
            : <p role="alert">{photoWords.someFailed(failed)}</p>}
          <p class="row">
            <button type="button" class="second" disabled={disabled} onClick={() => { setWaiting(null); onHandOver(waiting) }}>{photoWords.without}</button>
            <button type="button" class="quiet" onClick={() => setWaiting(null)}>{words.cancel}</button>
          </p>
        </div>
      )}
      <p class="row">
        <button type="submit" class="main" disabled={disabled || (waiting !== null && underWay > 0)}>{sending ? words.sending : words.submit}</button>
        {onLeave !== undefined && <button type="button" class="quiet" onClick={onLeave}>{words.cancel}</button>}
      </p>
    </form>
  )
}

/** The name of a case's hand-over form, by which what is written in it is kept until it is sent. */
export function handOverPlace(link: string): string {
  return `hand over ${link}`
}

const NONE_ON_THE_WAY = onTheWay([])

const NOTHING = { name: '', email: '', phone: '', callTime: '', note: '' }

/** The field of each part: its kind, what the browser may fill in by itself (HTML, autofill field names), and how long it may be. */
const FIELDS = {
  name: { type: 'text', autocomplete: 'name', maxLength: 120 }, email: { type: 'email', autocomplete: 'email', maxLength: 254 },
  phone: { type: 'tel', autocomplete: 'tel', maxLength: 40 }, callTime: { type: 'text', autocomplete: 'off', maxLength: 120 },
} as const

/** Loose on purpose: the service has the last word; this only catches a slip before it is sent. */
function looksLikeEmail(text: string): boolean {
  return /^[^\s@]+@[^\s@]+\.[^\s@.]{2,}$/.test(text.trim())
}

function looksLikePhone(text: string): boolean {
  return /^[0-9+() .\-x]*$/.test(text.trim())
}
