import { useState } from 'preact/hooks'
import type { TicketView } from '../../../shared/index.js'
import { useKeptFields } from '../case/kept-fields.js'
import { WorkForm } from './work-form.js'

interface KinFormProps {
  /** Names this form of this ticket, to keep what is written in it. */
  readonly place: string
  readonly view: TicketView
  readonly sending: boolean
  readonly onSend: (path: 'merge' | 'link', ticket: string) => void
  readonly onLeave: () => void
}

/** Notes that another ticket has to do with this one, or that this one is a repeat of it. */
export function KinForm({ place, view, sending, onSend, onLeave }: KinFormProps) {
  const mayMerge = view.moves.includes('merge')
  const [{ ticket }, keep] = useKeptFields(place, { ticket: view.sameAsker[0]?.ticket ?? '' }, 'tab')
  const [path, setPath] = useState<'merge' | 'link'>(mayMerge && view.sameAsker.length > 0 ? 'merge' : 'link')
  const [fault, setFault] = useState<string | null>(null)

  function send(): void {
    const number = ticket.trim().replace(/^#/, '')
    const found = !/^[0-9]{1,12}$/.test(number) ? 'Please write the number of the other ticket.' : number === view.ticket ? 'That is this ticket. Please write the number of the other one.' : null
    setFault(found)
    if (found === null) onSend(path, number)
  }
  return (
    <WorkForm title={mayMerge ? 'Link or merge tickets' : 'Link tickets'} submit={path === 'merge' ? 'Merge this one into it' : 'Link the two'} sending={sending} fault={fault} onSubmit={send} onLeave={onLeave} start="#other-ticket">
      <div class="field short">
        <label for="other-ticket">Number of the other ticket</label>
        <input id="other-ticket" type="text" inputMode="numeric" autocomplete="off" maxLength={12} value={ticket} onInput={event => keep({ ticket: event.currentTarget.value })} />
      </div>
      {view.sameAsker.length > 0 && (
        <p class="row"><span class="hint">Left with the same address or telephone:</span> {view.sameAsker.map(row => <button type="button" class="second" key={row.ticket} onClick={() => keep({ ticket: row.ticket })}>Ticket {row.ticket}</button>)}</p>
      )}
      <fieldset class="outcomes">
        <legend class="hush">How they belong together</legend>
        <label><input type="radio" name="kin" checked={path === 'link'} onChange={() => setPath('link')} /> They have to do with each other</label>
        {mayMerge && <label><input type="radio" name="kin" checked={path === 'merge'} onChange={() => setPath('merge')} /> This one is a repeat by the same asker</label>}
      </fieldset>
      {path === 'merge' && <p class="hint">Its asker then reads the answer of the other ticket. It can be taken apart again.</p>}
    </WorkForm>
  )
}
