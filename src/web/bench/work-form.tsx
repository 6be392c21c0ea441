import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'

interface WorkFormProps {
  readonly title: string
  readonly submit: string
  readonly sending: boolean
  readonly fault?: string | null
  /** Where the focus starts; the first field when not named. */
  readonly start?: string
  readonly onSubmit: () => void
  readonly onLeave: () => void
  readonly children: ComponentChildren
}

/** A part of the ticket's sheet that is open to be filled in. It takes the focus, since a key or a press opened it. */
export function WorkForm({ title, submit, sending, fault = null, start = 'input, textarea, select', onSubmit, onLeave, children }: WorkFormProps) {
  const form = useRef<HTMLFormElement>(null)
  useLayoutEffect(() => form.current?.querySelector<HTMLElement>(start)?.focus(), [])
  const send = () => { if (!sending) onSubmit() }
  return (
    <form
      class="step work-form" ref={form} noValidate aria-label={title} onSubmit={event => { event.preventDefault(); send() }}
      onKeyDown={event => { if (event.key === 'Enter' && event.ctrlKey) { event.preventDefault(); send() } }}
    >
      <h3>{title}</h3>
      {children}
      {fault !== null && <p class="fault" role="alert">{fault}</p>}
      <p class="row">
        <button type="submit" class="main" disabled={sending}>{sending ? 'Sending …' : submit}<kbd>Ctrl Enter</kbd></button>
        <button type="button" class="quiet" onClick={onLeave}>Leave it<kbd>Esc</kbd></button> <span class="hint">What you wrote is kept.</span>
      </p>
    </form>
  )
}
