import { useState } from 'preact/hooks'
import type { Me } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { AccountForm } from './account-form.js'
import { inWords } from '../wording/in-words.js'
import { NewPassword, passwordFault } from './new-password.js'

/** Changes one's own password; every other session ends. */
export function PasswordForm({ service, onMe }: { readonly service: StaffService, readonly onMe: (me: Me) => void }) {
  const [current, setCurrent] = useState('')
  const [next, setNext] = useState('')
  const [again, setAgain] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const [done, setDone] = useState(false)

  async function submit(): Promise<void> {
    const found = current === '' ? 'Please write your present password.' : passwordFault(next, again)
    setFault(found)
    setDone(false)
    if (found !== null) return
    setSending(true)
    const reply = await service.changePassword({ current, next })
    setSending(false)
    setFault(inWords(reply))
    if (!reply.ok) return
    setCurrent('')
    setNext('')
    setAgain('')
    setDone(true)
    onMe(reply.value)
  }
  return (
    <AccountForm title="Password" submit="Change the password" sending={sending} fault={fault} onSubmit={() => void submit()}>
      <div class="field short"><label for="current-password">Present password</label><input id="current-password" type="password" autocomplete="current-password" maxLength={200} value={current} onInput={event => setCurrent(event.currentTarget.value)} /></div>
      <NewPassword next={next} again={again} onNext={setNext} onAgain={setAgain} />
      <p class="hint" role="status">{done && 'The password is changed. You are signed out everywhere else.'}</p>
    </AccountForm>
  )
}
