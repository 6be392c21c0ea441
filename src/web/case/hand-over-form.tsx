import type { ComponentChildren, Ref } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Contact, HandOver } from '../../../shared/index.js'
import { LONGEST_WORDS } from './longest-words.js'
import { useSheetWording } from '../wording/sheet-language.js'

interface HandOverFormProps {
  readonly disabled: boolean
  readonly sending: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  /** Puts the focus in the first field, for those who work by keys. */
  readonly startInField?: boolean
  /** Why the case is handed over, above the form. */
  readonly children?: ComponentChildren
  /** The photos of the sheet, with the way to add one. */
  readonly photos?: ComponentChildren
  readonly onHandOver: (body: Omit<HandOver, 'revision'>) => void
  readonly onLeave?: (() => void) | undefined
}

/** The way to a specialist: contact if the asker likes, a note if there is more to say. */
export function HandOverForm({ disabled, sending, headingRef, startInField = false, children, photos, onHandOver, onLeave }: HandOverFormProps) {
  const words = useSheetWording().handOver
  const [name, setName] = useState('')
  const [email, setEmail] = useState('')
  const [phone, setPhone] = useState('')
  const [note, setNote] = useState('')
  const [faults, setFaults] = useState<{ email?: string, phone?: string }>({})

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
    const contact = filledIn({ name, email, phone })
    onHandOver({ ...(contact === null ? {} : { contact }), ...(note.trim() === '' ? {} : { note: note.trim() }) })
  }

  const field = (label: string, key: 'name' | 'email' | 'phone', value: string, set: (value: string) => void, fault?: string) => (
    <div class="field">
      <label for={`contact-${key}`}>{label} <span class="hint">{words.optional}</span></label>
      <input
        id={`contact-${key}`} list={undefined} ref={key === 'name' ? firstField : null} type={key === 'name' ? 'text' : key === 'email' ? 'email' : 'tel'} value={value}
        autocomplete={key === 'phone' ? 'tel' as const : key} maxLength={key === 'phone' ? 40 : 120}
        aria-invalid={fault !== undefined} {...(fault === undefined ? {} : { 'aria-describedby': `fault-${key}` })}
        onInput={event => set(event.currentTarget.value)}
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
        <legend>{words.contactLead}</legend>
        <div class="contact">
          {field(words.name, 'name', name, setName)}
          {field(words.email, 'email', email, setEmail, faults.email)}
          {field(words.phone, 'phone', phone, setPhone, faults.phone)}
        </div>
        <p class="hint">{words.privacy}</p>
      </fieldset>
      <div class="field">
        <label for="hand-over-note">{words.note}</label>
        <textarea id="hand-over-note" rows={3} maxLength={LONGEST_WORDS} value={note} onInput={event => setNote(event.currentTarget.value)} />
      </div>
      {photos}
      <p class="row">
        <button type="submit" class="main" disabled={disabled}>{sending ? words.sending : words.submit}</button>
        {onLeave !== undefined && <button type="button" class="quiet" onClick={onLeave}>{words.cancel}</button>}
      </p>
    </form>
  )
}

/** The contact with empty parts left out, or null when nothing was filled in. */
function filledIn(typed: { name: string, email: string, phone: string }): Contact | null {
  const contact: Contact = {}
  if (typed.name.trim() !== '') contact.name = typed.name.trim()
  if (typed.email.trim() !== '') contact.email = typed.email.trim()
  if (typed.phone.trim() !== '') contact.phone = typed.phone.trim()
  return Object.keys(contact).length === 0 ? null : contact
}

/** Loose on purpose: the service has the last word; this only catches a slip before it is sent. */
function looksLikeEmail(text: string): boolean {
  return /^[^\s@]+@[^\s@]+\.[^\s@.]{2,}$/.test(text.trim())
}

function looksLikePhone(text: string): boolean {
  return /^[0-9+() .\-x]*$/.test(text.trim())
}
