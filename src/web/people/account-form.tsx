import type { ComponentChildren } from 'preact'

interface AccountFormProps {
  readonly title: string
  readonly submit: string
  readonly sending: boolean
  readonly fault: string | null
  readonly onSubmit: () => void
  readonly children: ComponentChildren
}

/** One form of a page about accounts. */
export function AccountForm({ title, submit, sending, fault, onSubmit, children }: AccountFormProps) {
  return (
    <form class="step account-form" noValidate aria-label={title} onSubmit={event => { event.preventDefault(); if (!sending) onSubmit() }}>
      <h2 class="step-title">{title}</h2>
      {children}
      {fault !== null && <p class="fault" role="alert">{fault}</p>}
      <p class="row"><button type="submit" class="main" disabled={sending}>{sending ? 'Sending …' : submit}</button></p>
    </form>
  )
}
