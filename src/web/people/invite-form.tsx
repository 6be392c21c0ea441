import { useRef, useState } from 'preact/hooks'
import type { Invitation, Role } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'
import { inWords } from '../wording/in-words.js'
import { roleNames } from './role-names.js'

/** Invites somebody. The link is shown once, to be passed on by hand. */
export function InviteForm({ service, onInvited }: { readonly service: StaffService, readonly onInvited: () => void }) {
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('volunteer')
  const [made, setMade] = useState<Invitation | null>(null)
  const [copied, setCopied] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const link = useRef<HTMLInputElement>(null)

  async function invite(event: Event): Promise<void> {
    event.preventDefault()
    if (sending) return
    if (name.trim() === '') { setFault('Please write a name to sign in with.'); return }
    setSending(true)
    const reply = await service.invite({ name: name.trim(), role })
    setSending(false)
    setFault(inWords(reply))
    if (!reply.ok) return
    setMade(reply.value)
    setCopied(false)
    setName('')
    onInvited()
    setTimeout(() => link.current?.select())
  }
  async function copy(text: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(text)
      setCopied(true)
    } catch {
      link.current?.select()
    }
  }
  return (
    <form class="step invite" noValidate aria-label="Invite somebody" onSubmit={event => void invite(event)}>
      <h3>Invite somebody</h3>
      <div class="field short"><label for="invite-name">Name to sign in with</label><input id="invite-name" type="text" autocomplete="off" autocapitalize="none" maxLength={80} value={name} onInput={event => setName(event.currentTarget.value)} /></div>
      <fieldset class="outcomes">
        <legend class="hush">Role</legend>
        {roleNames.map(row => <label key={row.role}><input type="radio" name="invite-role" checked={role === row.role} onChange={() => setRole(row.role)} /> <span>{row.words} <span class="hint">{row.may}</span></span></label>)}
      </fieldset>
      {fault !== null && <p class="fault" role="alert">{fault}</p>}
      <p class="row"><button type="submit" class="main" disabled={sending}>{sending ? 'Making the link …' : 'Make an invitation link'}</button></p>
      {made !== null && (
        <div class="as-read">
          <p>Give this link to {made.name}. It works once, until {dayInWords(made.expiresAt)}, and is shown only now.</p>
          <p class="row copy-line">
            <label class="hush" for="invite-link">Invitation link</label>
            <input id="invite-link" ref={link} type="text" readOnly value={address(made)} />
            <button type="button" class="second" onClick={() => void copy(address(made))}>Copy the link</button>
            <span class="hint" role="status">{copied && 'Copied.'}</span>
          </p>
        </div>
      )}
    </form>
  )
}

/** The whole address: the service may know its own page only as a path. */
function address({ link }: Invitation): string {
  return new URL(link, location.href).href
}
