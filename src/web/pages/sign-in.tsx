import { render } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Me } from '../../../shared/index.js'
import { createStaffService } from '../wire/staff-service.js'
import './page.css'

const service = createStaffService()

function SignInPage() {
  const [name, setName] = useState('')
  const [password, setPassword] = useState('')
  /** Null until the service asks for a one-time code. */
  const [code, setCode] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const [fault, setFault] = useState<string | null>(null)

  const codeField = useRef<HTMLInputElement>(null)
  // The rest is filled in already.
  useEffect(() => { if (code === '') codeField.current?.focus() }, [code])

  async function submit(event: Event): Promise<void> {
    event.preventDefault()
    if (sending) return
    if (name.trim() === '' || password === '') {
      setFault('Please fill in both your name and your password.')
      return
    }
    setSending(true)
    const reply = await service.signIn({ name: name.trim(), password, ...(code === null || code.trim() === '' ? {} : { code: code.trim() }) })
    if (reply.ok) {
      location.assign(nextPage(reply.value))
      return
    }
    setSending(false)
    const asked = reply.trouble.kind === 'refused' ? reply.trouble.code : null
    if (asked === 'CODE_NEEDED' || asked === 'CODE_WRONG') {
      setCode('')
      setFault(asked === 'CODE_WRONG' ? ('detail' in reply.trouble ? reply.trouble.detail : null) : null)
      return
    }
    setCode(null)
    setPassword('')
    setFault(('detail' in reply.trouble ? reply.trouble.detail : null) ?? 'We cannot reach the service just now. Please try again.')
  }

  return (
    <main class="page narrow">
      <form class="sheet" noValidate onSubmit={event => void submit(event)}>
        <div class="step">
          <h1 class="step-title">Sign in</h1>
          <p>For volunteers and specialists of the helpline. Askers need no account.</p>
          <div class="field short">
            <label for="name">Name</label>
            <input id="name" type="text" autocomplete="username" autocapitalize="none" maxLength={80} value={name} onInput={event => setName(event.currentTarget.value)} />
          </div>
          <div class="field short">
            <label for="password">Password</label>
            <input id="password" type="password" autocomplete="current-password" maxLength={200} value={password} onInput={event => setPassword(event.currentTarget.value)} />
          </div>
          {code !== null && (
            <div class="field short">
              <label for="code">One-time code</label>
              <input id="code" ref={codeField} type="text" autocomplete="one-time-code" autocapitalize="none" maxLength={40} value={code} aria-describedby="code-hint" onInput={event => setCode(event.currentTarget.value)} />
              <p class="hint" id="code-hint">The six digits that your app shows now, or one of your recovery codes.</p>
            </div>
          )}
          {fault !== null && <p class="fault" role="alert">{fault}</p>}
          <p class="row"><button type="submit" class="main" disabled={sending}>{sending ? 'Signing in …' : 'Sign in'}</button></p>
          <p class="hint">In the demonstration, the names and passwords are printed where the service was started.</p>
        </div>
      </form>
    </main>
  )
}

/** Only our own staff pages may follow: an address in a link must not send people elsewhere. */
function nextPage(person: Me): string {
  const wanted = new URLSearchParams(location.search).get('next')
  if (person.codes === 'to be set up') return '/account'
  if (wanted === '/sheet' || wanted === '/bench' || wanted === '/people' || wanted === '/account') return wanted
  return person.role === 'volunteer' ? '/sheet' : '/bench'
}

const page = document.querySelector('#page')
if (page !== null) render(<SignInPage />, page)
