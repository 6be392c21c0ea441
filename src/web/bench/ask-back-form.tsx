import { useState } from 'preact/hooks'
import type { AskBack, TicketView } from '../../../shared/index.js'
import { bestFitting } from '../case/best-fitting.js'
import { useKeptFields } from '../case/kept-fields.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'
import { checksInOrder, type OfferedCheck } from './checks-in-order.js'
import { WorkForm } from './work-form.js'

interface AskBackFormProps {
  /** Names this form of this ticket, to keep what is written in it. */
  readonly place: string
  readonly service: StaffService
  readonly view: TicketView
  readonly sending: boolean
  readonly onSend: (body: AskBack) => void
  readonly onLeave: () => void
}

/** What the specialist wants to know from the asker: checks picked from the guide, photos, and words of their own. */
export function AskBackForm({ place, service, view, sending, onSend, onLeave }: AskBackFormProps) {
  const rows = useRows(view.case.place.host?.host ?? 'any', key => service.checks(key))
  const [typed, setTyped] = useState('')
  const [{ checks, photos, text }, keep] = useKeptFields(place, EMPTY, 'tab')
  const [fault, setFault] = useState<string | null>(null)

  const offered = checksInOrder(view.case, rows.kind === 'here' ? rows.value.checks : [])
  const picked = offered.filter(row => checks.includes(row.check.id))
  const fitting = bestFitting(offered.filter(row => !picked.includes(row)), row => [row.check.ask], typed, 7)
  const pick = (id: string, on: boolean) => keep({ checks: on ? [...checks, id] : checks.filter(other => other !== id) })
  const line = (row: OfferedCheck) => (
    <li key={row.check.id}>
      <label class="check-pick">
        <input type="checkbox" checked={checks.includes(row.check.id)} disabled={!checks.includes(row.check.id) && checks.length >= MOST_CHECKS} onChange={event => pick(row.check.id, event.currentTarget.checked)} />
        <span>{row.check.ask} <span class="origin">{row.why}</span></span>
      </label>
    </li>
  )

  function send(): void {
    const nothing = checks.length === 0 && !photos && text.trim() === ''
    setFault(nothing ? 'Pick a check, ask for photos or write a few words.' : null)
    if (!nothing) onSend({ text: text.trim(), checks: [...checks], photos })
  }
  return (
    <WorkForm title="Ask the asker back" submit="Ask them" sending={sending} fault={fault} onSubmit={send} onLeave={onLeave}>
      <p class="hint">Their sheet opens again with these checks. What they find lands here and is weighed at once.</p>
      <fieldset class="pick-checks">
        <legend>Checks to ask</legend>
        {rows.kind === 'failed' && <p class="fault">The checks could not be fetched. <button type="button" class="quiet" onClick={rows.again}>Try again</button></p>}
        {picked.length > 0 && <><h4>Picked</h4><ul>{picked.map(line)}</ul></>}
        <div class="field short">
          <label for="check-words">Type to find a check</label>
          <input
            id="check-words" type="text" autocomplete="off" value={typed} onInput={event => setTyped(event.currentTarget.value)}
            onKeyDown={event => {
              const first = fitting.shown[0]
              if (event.key !== 'Enter' || event.ctrlKey || event.isComposing) return
              event.preventDefault()
              if (typed.trim() !== '' && first !== undefined && checks.length < MOST_CHECKS) { pick(first.check.id, true); setTyped('') }
            }}
          />
          <p class="hint"><kbd>Enter</kbd> picks the first.</p>
        </div>
        <ul>{fitting.shown.map(line)}</ul>
        {fitting.hidden > 0 && <p class="hint">{fitting.hidden} more. Type to find them.</p>}
      </fieldset>
      <label class="check-pick"><input type="checkbox" checked={photos} onChange={event => keep({ photos: event.currentTarget.checked })} /> <span>Ask for photos</span></label>
      <div class="field">
        <label for="ask-back-text">In your own words <span class="hint">if you like</span></label>
        <textarea id="ask-back-text" rows={3} maxLength={4000} value={text} onInput={event => keep({ text: event.currentTarget.value })} />
      </div>
    </WorkForm>
  )
}

const EMPTY: { readonly checks: readonly string[], readonly photos: boolean, readonly text: string } = { checks: [], photos: false, text: '' }

/** More than this at once and askers give up half way. */
const MOST_CHECKS = 6
