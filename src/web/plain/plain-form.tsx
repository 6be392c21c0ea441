import type { ComponentChildren } from 'preact'
import { plainAddress, type PlainFault } from './page.js'

interface PlainFormProps {
  readonly link: string
  /** The change that the form asks for: the last part of its address. */
  readonly change: string
  /** The revision that the sender sees: a change on an older one is refused, and nothing is written over. */
  readonly revision: number
  readonly class?: string
  readonly label?: string
  readonly children: ComponentChildren
}

/** A form that changes a case. */
export function PlainForm({ link, change, revision, label, class: kind, children }: PlainFormProps) {
  return (
    <form method="post" action={plainAddress(link, change)} class={kind} aria-label={label}>
      <input type="hidden" name="revision" value={revision} />
      {children}
    </form>
  )
}

/** A button among several of one form, each with its own answer. */
export function AnswerButton({ value, note, class: kind = 'answer', children }: { readonly value: string, readonly note?: string | null, readonly class?: string, readonly children: ComponentChildren }) {
  return <button type="submit" name="answer" value={value} class={kind}><span class="answer-words">{children}</span>{note != null && <span class="answer-note">{note}</span>}</button>
}

interface PlainFieldProps {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly type?: 'text' | 'email' | 'tel'
  readonly autocomplete?: string
  readonly rows?: number
  readonly longest: number
  readonly ruled?: boolean
  readonly value: string
  readonly fault: PlainFault | null
}

/** One field with its label, and with what is wrong with it. */
export function PlainField({ name, label, hint, type = 'text', autocomplete = 'off', rows, longest, ruled = false, value, fault }: PlainFieldProps) {
  const wrong = fault?.field === name ? fault.words : null
  const told = { 'aria-invalid': wrong !== null, ...(wrong === null ? {} : { 'aria-describedby': `fault-${name}` }) }
  return (
    <div class="field">
      <label for={name}>{label} {hint !== undefined && <span class="hint">{hint}</span>}</label>
      {rows === undefined
        ? <input id={name} name={name} type={type} maxLength={longest} value={value} list={undefined} {...{ autocomplete }} {...told} />
        : <textarea id={name} name={name} rows={rows} maxLength={longest} class={ruled ? 'ruled' : undefined} {...told}>{value}</textarea>}
      {wrong !== null && <p class="fault" id={`fault-${name}`}>{wrong}</p>}
    </div>
  )
}
