import type { Ref } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { ProblemRows, SettleTicket, TicketView } from '../../../shared/index.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'

interface AnswerFormProps {
  readonly service: StaffService
  readonly view: TicketView
  readonly sending: boolean
  readonly textRef: Ref<HTMLTextAreaElement>
  readonly onSettle: (body: SettleTicket) => void
}

type Outcome = SettleTicket['outcome']['kind']
type ProblemRow = ProblemRows['problems'][number]

/** The specialist's answer: what it is, and the text the asker reads, begun from the guide's own advice. */
export function AnswerForm({ service, view, sending, textRef, onSettle }: AnswerFormProps) {
  const host = view.case.place.host?.host ?? 'any'
  const ofHost = useRows(host, key => service.problems(key))
  const ofAny = useRows(host === 'any' ? null : 'any', key => service.problems(key))
  const [outcome, setOutcome] = useState<Outcome>('problem')
  const [problem, setProblem] = useState(view.differential.find(line => line.problem !== null)?.problem ?? '')
  const [text, setText] = useState('')
  /** The advice last put in; text equal to it has not been touched and may be replaced. */
  const [putIn, setPutIn] = useState('')
  const [fault, setFault] = useState<string | null>(null)

  const near: readonly ProblemRow[] = ofHost.kind === 'here' ? ofHost.value.problems : []
  const nearIds = new Set(near.map(row => row.problem))
  const far: readonly ProblemRow[] = ofAny.kind === 'here' && host !== 'any' ? ofAny.value.problems.filter(row => !nearIds.has(row.problem)) : []
  const advice = [...near, ...far].find(row => row.problem === problem)?.advice ?? ''

  useEffect(() => {
    if (outcome === 'problem' && advice !== '' && text === putIn) {
      setText(advice)
      setPutIn(advice)
    }
  }, [advice, outcome])

  function settle(event: Event): void {
    event.preventDefault()
    const found = text.trim() === '' ? 'Please write what the asker should read.' : outcome === 'problem' && problem === '' ? 'Please choose the problem.' : null
    setFault(found)
    if (found !== null || sending) return
    onSettle({ text: text.trim(), outcome: outcome === 'problem' ? { kind: 'problem', problem } : { kind: outcome } })
  }

  return (
    <form class="step answer-form" noValidate onSubmit={settle}>
      <h3>Your answer</h3>
      <fieldset class="outcomes">
        <legend class="hush">What it is</legend>
        {outcomes.map(row => (
          <label key={row.kind}><input type="radio" name="outcome" checked={outcome === row.kind} onChange={() => setOutcome(row.kind)} /> {row.words}</label>
        ))}
      </fieldset>
      {outcome === 'problem' && (
        <div class="field">
          <label for="answer-problem">Problem</label>
          <select id="answer-problem" value={problem} onChange={event => setProblem(event.currentTarget.value)}>
            <option value="">choose</option>
            <optgroup label={view.case.place.host?.name ?? 'All plants'}>{near.map(row => <option key={row.problem} value={row.problem}>{row.name}</option>)}</optgroup>
            {far.length > 0 && <optgroup label="Other plants">{far.map(row => <option key={row.problem} value={row.problem}>{row.name}</option>)}</optgroup>}
          </select>
        </div>
      )}
      <div class="field">
        <label for="answer-text">What the asker will read</label>
        <textarea
          id="answer-text" ref={textRef} rows={9} maxLength={4000} value={text} onInput={event => setText(event.currentTarget.value)}
          onKeyDown={event => { if (event.key === 'Enter' && event.ctrlKey) settle(event) }}
        />
        {outcome === 'problem' && advice !== '' && text !== advice && (
          <p><button type="button" class="quiet" onClick={() => { setText(advice); setPutIn(advice) }}>Put the guide’s advice in again</button></p>
        )}
      </div>
      {fault !== null && <p class="fault" role="alert">{fault}</p>}
      <p><button type="submit" class="main" disabled={sending}>{sending ? 'Sending …' : 'Send the answer and settle'}<kbd>Ctrl Enter</kbd></button></p>
    </form>
  )
}

const outcomes: readonly { readonly kind: Outcome, readonly words: string }[] = [
  { kind: 'problem', words: 'A problem of the guide' },
  { kind: 'not known', words: 'Not known' },
  { kind: 'not a plant problem', words: 'Not a plant problem' },
]
