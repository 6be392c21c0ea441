import { useState } from 'preact/hooks'
import type { CodeSecret, Me } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { AccountForm } from './account-form.js'
import { inWords } from '../wording/in-words.js'
import { qrPath } from './qr-path.js'

interface CodesCardProps {
  readonly service: StaffService
  readonly me: Me
  readonly onMe: (me: Me) => void
}

/** One-time codes: begun with the password, put in force by a first code, and stopped with the password. */
export function CodesCard({ service, me, onMe }: CodesCardProps) {
  const [password, setPassword] = useState('')
  const [code, setCode] = useState('')
  const [secret, setSecret] = useState<CodeSecret | null>(null)
  const [recovery, setRecovery] = useState<readonly string[]>([])
  const [fault, setFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)

  async function run(send: () => Promise<string | null>): Promise<void> {
    if (sending) return
    setSending(true)
    setFault(await send())
    setSending(false)
  }
  const start = () => run(async () => {
    const reply = await service.startCodes({ password })
    setPassword('')
    if (reply.ok) setSecret(reply.value)
    return inWords(reply)
  })
  const confirm = () => run(async () => {
    const reply = await service.confirmCode({ code: code.replace(/\s/g, '') })
    setCode('')
    if (!reply.ok) return inWords(reply)
    setSecret(null)
    setRecovery(reply.value.codes)
    const now = await service.me()
    if (now.ok) onMe(now.value)
    return null
  })
  const stop = () => run(async () => {
    const reply = await service.stopCodes({ password })
    setPassword('')
    setRecovery([])
    if (reply.ok) onMe(reply.value)
    return inWords(reply)
  })

  if (secret !== null) {
    return (
      <AccountForm title="One-time codes" submit="Put them in force" sending={sending} fault={fault} onSubmit={() => void confirm()}>
        <ol class="steps">
          <li>Open an app for one-time codes on your phone and let it read this drawing.<QrDrawing address={secret.address} /></li>
          <li>Or type this key into the app: <code class="key">{inFours(secret.secret)}</code></li>
          <li>Then write the six digits that the app shows now.</li>
        </ol>
        <div class="field short"><label for="first-code">Code</label><input id="first-code" type="text" inputMode="numeric" autocomplete="one-time-code" maxLength={9} value={code} onInput={event => setCode(event.currentTarget.value)} /></div>
      </AccountForm>
    )
  }
  return (
    <>
      {recovery.length > 0 && (
        <section class="step recovery" aria-labelledby="recovery-title">
          <h3 id="recovery-title">Your recovery codes</h3>
          <p>Each lets you in once without the app. They are shown only now: print them or write them down, and keep them away from your phone.</p>
          <ul class="codes">{recovery.map(each => <li key={each}><code class="key">{each}</code></li>)}</ul>
          <p class="row"><button type="button" class="second" onClick={() => print()}>Print</button><button type="button" class="quiet" onClick={() => setRecovery([])}>I have them</button></p>
        </section>
      )}
      <AccountForm title="One-time codes" submit={me.codes === 'on' ? 'Stop one-time codes' : 'Begin'} sending={sending} fault={fault} onSubmit={() => void (me.codes === 'on' ? stop() : start())}>
        {me.codes === 'to be set up' && <p class="must"><b>Your role needs one-time codes.</b> Set them up now; then the other pages open.</p>}
        <p>{me.codes === 'on' ? `They are on: signing in asks for a code besides the password. Recovery codes left: ${me.recoveryCodesLeft}.` : 'They are off. With them, somebody who learns your password still cannot sign in.'}</p>
        <div class="field short"><label for="codes-password">Your password</label><input id="codes-password" type="password" autocomplete="current-password" maxLength={200} value={password} onInput={event => setPassword(event.currentTarget.value)} /></div>
      </AccountForm>
    </>
  )
}

function QrDrawing({ address }: { readonly address: string }) {
  const { side, path } = qrPath(address)
  return (
    <svg class="qr" viewBox={`0 0 ${side} ${side}`} shape-rendering="crispEdges" role="img" aria-label="The key as a drawing for the app">
      <rect class="qr-ground" width={side} height={side} /><path class="qr-ink" d={path} />
    </svg>
  )
}

function inFours(secret: string): string {
  return secret.replace(/(.{4})(?=.)/g, '$1 ')
}
