import { useEffect, useState } from 'preact/hooks'
import type { HelplineSettings, Role } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { AccountForm } from './account-form.js'
import { inWords } from '../wording/in-words.js'
import { roleNames } from './role-names.js'

/** What an administrator decides for the whole helpline. */
export function SettingsForm({ service }: { readonly service: StaffService }) {
  const [settings, setSettings] = useState<HelplineSettings | null>(null)
  const [days, setDays] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const [done, setDone] = useState(false)

  function show(next: HelplineSettings): void {
    setSettings(next)
    setDays(next.eraseContactAfterDays === null ? '' : String(next.eraseContactAfterDays))
  }
  useEffect(() => { void service.settings().then(reply => { setFault(inWords(reply)); if (reply.ok) show(reply.value) }) }, [])
  if (settings === null) return fault === null ? null : <p class="step fault" role="alert">{fault}</p>

  async function decide(now: HelplineSettings): Promise<void> {
    const number = days.trim() === '' ? null : Number(days)
    const fits = number === null || (Number.isInteger(number) && number >= 1 && number <= 3650)
    setFault(fits ? null : 'Please write a whole number of days from 1 to 3650, or nothing.')
    setDone(false)
    if (!fits) return
    setSending(true)
    const reply = await service.decideSettings({ ...now, eraseContactAfterDays: number })
    setSending(false)
    setFault(inWords(reply))
    setDone(reply.ok)
    if (reply.ok) show(reply.value)
  }
  const codesFor = (role: Role, on: boolean) => setSettings({ ...settings, codesFor: on ? [...settings.codesFor, role] : settings.codesFor.filter(other => other !== role) })
  return (
    <AccountForm title="Settings" submit="Keep the settings" sending={sending} fault={fault} onSubmit={() => void decide(settings)}>
      <fieldset class="outcomes">
        <legend>Who must use one-time codes</legend>
        {roleNames.map(row => <label key={row.role}><input type="checkbox" checked={settings.codesFor.includes(row.role)} onChange={event => codesFor(row.role, event.currentTarget.checked)} /> {row.words}</label>)}
      </fieldset>
      <div class="field short">
        <label for="erase-days">Days after settling when contact details are erased</label>
        <input id="erase-days" type="text" inputMode="numeric" autocomplete="off" maxLength={4} value={days} aria-describedby="erase-hint" onInput={event => setDays(event.currentTarget.value)} />
        <p class="hint" id="erase-hint">Empty takes what the region’s file says.</p>
      </div>
      <p class="hint" role="status">{done && 'Kept.'}</p>
    </AccountForm>
  )
}
