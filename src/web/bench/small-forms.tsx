import { useState } from 'preact/hooks'
import type { HandOn, NoteForColleagues, RecordResult, SendSample, TicketView } from '../../../shared/index.js'
import { useKeptFields } from '../case/kept-fields.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'
import { WorkForm } from './work-form.js'

interface SmallFormProps<Body> {
  /** Names this form of this ticket, to keep what is written in it. */
  readonly place: string
  readonly sending: boolean
  readonly onSend: (body: Body) => void
  readonly onLeave: () => void
}

/** A note that only colleagues see. */
export function NoteForm({ place, sending, onSend, onLeave }: SmallFormProps<NoteForColleagues>) {
  const [{ text }, keep] = useKeptFields(place, { text: '' }, 'tab')
  const [fault, setFault] = useState<string | null>(null)
  return (
    <WorkForm
      title="Note for colleagues" submit="Keep the note" sending={sending} fault={fault} onLeave={onLeave}
      onSubmit={() => { if (text.trim() === '') setFault('Please write the note first.'); else onSend({ text: text.trim() }) }}
    >
      <LongField id="colleague-note" label="Only colleagues see it" rows={3} value={text} onInput={next => keep({ text: next })} />
    </WorkForm>
  )
}

/** The colleague who goes on with the ticket. */
export function HandOnForm({ service, me, sending, onSend, onLeave }: Omit<SmallFormProps<HandOn>, 'place'> & { readonly service: StaffService, readonly me: string }) {
  const rows = useRows('colleagues', () => service.colleagues())
  const [to, setTo] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const others = rows.kind === 'here' ? rows.value.people.filter(person => person.name !== me) : []
  return (
    <WorkForm
      title="Hand to a colleague" submit="Hand it on" sending={sending} fault={fault} start="select" onLeave={onLeave}
      onSubmit={() => { if (to === '') setFault('Please choose a colleague.'); else onSend({ to }) }}
    >
      {rows.kind === 'failed' && <p class="fault">The names could not be fetched. <button type="button" class="quiet" onClick={rows.again}>Try again</button></p>}
      {rows.kind === 'here' && others.length === 0 && <p>There is no colleague at the bench yet. An administrator can invite one.</p>}
      <div class="field short">
        <label for="hand-on-to">Who goes on with it</label>
        <select id="hand-on-to" value={to} onChange={event => setTo(event.currentTarget.value)}>
          <option value="">choose</option>
          {others.map(person => <option key={person.name} value={person.name}>{person.name}, {person.role}</option>)}
        </select>
      </div>
    </WorkForm>
  )
}

/** A sample that goes to a laboratory. */
export function SampleForm({ place, view, sending, onSend, onLeave }: SmallFormProps<SendSample> & { readonly view: TicketView }) {
  const advised = view.case.step.kind === 'hand-over' ? view.case.step.sample : null
  const [{ number, packed }, keep] = useKeptFields(place, { number: '', packed: '' }, 'tab')
  const [fault, setFault] = useState<string | null>(null)
  return (
    <WorkForm
      title="A sample for the laboratory" submit="Note the sample" sending={sending} fault={fault} onLeave={onLeave}
      onSubmit={() => {
        if (number.trim() === '' || packed.trim() === '') setFault('Please fill in the number and what was packed.')
        else onSend({ number: number.trim(), packed: packed.trim() })
      }}
    >
      {advised !== null && <p class="hint">The guide says: {advised.ask} {advised.how}</p>}
      <ShortField id="sample-number" label="Number on the packet" value={number} onInput={next => keep({ number: next })} />
      <LongField id="sample-packed" label="What was packed" rows={3} value={packed} onInput={next => keep({ packed: next })} />
    </WorkForm>
  )
}

/** What the laboratory found. */
export function ResultForm({ place, view, sending, onSend, onLeave }: SmallFormProps<RecordResult> & { readonly view: TicketView }) {
  const open = view.samples.filter(sample => sample.result === null)
  const [{ number: chosen, text }, keep] = useKeptFields(place, { number: '', text: '' }, 'tab')
  const number = open.some(sample => sample.number === chosen) ? chosen : open[0]?.number ?? ''
  const [fault, setFault] = useState<string | null>(null)
  return (
    <WorkForm
      title="The laboratory’s result" submit="Write the result down" sending={sending} fault={fault} start="textarea" onLeave={onLeave}
      onSubmit={() => { if (text.trim() === '') setFault('Please write what was found.'); else onSend({ number, text: text.trim() }) }}
    >
      <div class="field short">
        <label for="result-number">Sample</label>
        <select id="result-number" value={number} onChange={event => keep({ number: event.currentTarget.value })}>
          {open.map(sample => <option key={sample.number} value={sample.number}>{sample.number}</option>)}
        </select>
      </div>
      <LongField id="result-text" label="What was found" rows={4} value={text} onInput={next => keep({ text: next })} />
    </WorkForm>
  )
}

/** Taking an answer back is told to the asker, so it is asked twice. */
export function ReopenForm({ sending, onSend, onLeave }: Omit<SmallFormProps<undefined>, 'place'>) {
  return (
    <WorkForm title="Take the answer back?" submit="Take it back and open the ticket" sending={sending} start="button.main" onLeave={onLeave} onSubmit={() => onSend(undefined)}>
      <p>The asker no longer sees the answer, and the ticket is open again. The answer stays here, among the earlier ones. To mend a word, change the answer instead.</p>
    </WorkForm>
  )
}

interface FieldProps {
  readonly id: string
  readonly label: string
  readonly value: string
  readonly onInput: (value: string) => void
}

function ShortField({ id, label, value, onInput }: FieldProps) {
  return <div class="field short"><label for={id}>{label}</label><input id={id} type="text" autocomplete="off" maxLength={60} value={value} onInput={event => onInput(event.currentTarget.value)} /></div>
}

function LongField({ id, label, rows, value, onInput }: FieldProps & { readonly rows: number }) {
  return <div class="field"><label for={id}>{label}</label><textarea id={id} rows={rows} maxLength={4000} value={value} onInput={event => onInput(event.currentTarget.value)} /></div>
}
