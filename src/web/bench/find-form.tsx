import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { RegionView } from '../../../shared/index.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'
import type { TicketWanted } from '../wire/ticket-service.js'

interface FindFormProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly sought: Partial<TicketWanted>
  readonly onFind: (sought: Partial<TicketWanted>) => void
  readonly onLeave: () => void
}

/** Finds tickets by their words, plant, problem, place and date; whatever is filled in must fit. */
export function FindForm({ service, region, sought, onFind, onLeave }: FindFormProps) {
  const hosts = useRows('hosts', () => service.hosts())
  const [form, setForm] = useState<Partial<TicketWanted>>(sought)
  const problems = useRows(form.host === undefined || form.host === '' ? 'any' : form.host, key => service.problems(key))
  const field = useRef<HTMLInputElement>(null)
  useLayoutEffect(() => field.current?.focus(), [])

  const set = (name: keyof TicketWanted) => (event: { readonly currentTarget: { readonly value: string } }) => setForm(before => ({ ...before, [name]: event.currentTarget.value }))
  const value = (name: keyof TicketWanted) => form[name] ?? ''
  return (
    <search>
      <form class="step find-form" onSubmit={event => { event.preventDefault(); onFind(form) }}>
        <div class="field wide">
          <label for="find-words">Words of the sheet, or a ticket’s number</label>
          <input id="find-words" ref={field} type="text" autocomplete="off" maxLength={200} value={value('words')} onInput={set('words')} />
        </div>
        <div class="field">
          <label for="find-host">Plant</label>
          <select id="find-host" value={value('host')} onChange={set('host')}>
            <option value="">any</option>
            {hosts.kind === 'here' && hosts.value.hosts.map(row => <option key={row.host} value={row.host}>{row.name}</option>)}
          </select>
        </div>
        <div class="field">
          <label for="find-problem">Problem</label>
          <select id="find-problem" value={value('problem')} onChange={set('problem')}>
            <option value="">any</option>
            {problems.kind === 'here' && problems.value.problems.map(row => <option key={row.problem} value={row.problem}>{row.name}</option>)}
          </select>
        </div>
        <div class="field">
          <label for="find-district">District</label>
          <select id="find-district" value={value('district')} onChange={set('district')}>
            <option value="">any</option>
            {region?.districts.map(row => <option key={row.district} value={row.district}>{row.name}</option>)}
          </select>
        </div>
        <div class="field"><label for="find-from">Handed over from</label><input id="find-from" type="date" value={value('from')} onInput={set('from')} /></div>
        <div class="field"><label for="find-until">until</label><input id="find-until" type="date" value={value('until')} onInput={set('until')} /></div>
        <p class="row wide">
          <button type="submit" class="main">Find<kbd>Enter</kbd></button>
          <button type="button" class="quiet" onClick={() => setForm({})}>Empty the form</button>
          <button type="button" class="quiet" onClick={onLeave}>Leave it<kbd>Esc</kbd></button>
        </p>
      </form>
    </search>
  )
}
