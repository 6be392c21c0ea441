import type { TicketView } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import type { TicketChangeBodies } from '../wire/ticket-service.js'
import { AskBackForm } from './ask-back-form.js'
import { KinForm } from './kin-form.js'
import { SettleForm } from './settle-form.js'
import { HandOnForm, NoteForm, ReopenForm, ResultForm, SampleForm } from './small-forms.js'
import type { FormName } from './ticket-actions.js'

interface OpenFormProps {
  readonly form: FormName
  readonly service: StaffService
  readonly view: TicketView
  readonly me: string
  readonly sendsMail: boolean
  readonly sending: boolean
  readonly onSend: <Path extends keyof TicketChangeBodies>(path: Path, body: TicketChangeBodies[Path]) => void
  readonly onLeave: () => void
}

/** The part of the sheet that is being filled in. */
export function OpenForm({ form, onSend, ...rest }: OpenFormProps) {
  const place = formPlace(rest.view.ticket, form)
  switch (form) {
    case 'answer': return <SettleForm {...rest} onSend={body => onSend(rest.view.moves.includes('amend') ? 'amend' : 'settle', body)} />
    case 'ask back': return <AskBackForm {...rest} place={place} onSend={body => onSend('ask-back', body)} />
    case 'sample': return <SampleForm {...rest} place={place} onSend={body => onSend('samples', body)} />
    case 'result': return <ResultForm {...rest} place={place} onSend={body => onSend('results', body)} />
    case 'hand on': return <HandOnForm {...rest} onSend={body => onSend('hand-on', body)} />
    case 'note': return <NoteForm {...rest} place={place} onSend={body => onSend('notes', body)} />
    case 'kin': return <KinForm {...rest} place={place} onSend={(path, ticket) => onSend(path, { ticket })} />
    case 'reopen': return <ReopenForm {...rest} onSend={() => onSend('reopen', undefined)} />
  }
}

/** The name of one form of one ticket, by which what is written in it is kept. */
export function formPlace(ticket: string, form: FormName): string {
  return `ticket ${ticket}, ${form}`
}
