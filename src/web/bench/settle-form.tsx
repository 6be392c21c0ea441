import type { Ref } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { SettleTicket, TicketView } from '../../../shared/index.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'
import { keepDraft, readDraft, type AnswerDraft } from './kept-draft.js'
import { outcomeInWords, outcomes } from './outcomes.js'
import { ProblemChooser } from './problem-chooser.js'
import { SettleReview } from './settle-review.js'

interface SettleFormProps {
  readonly service: StaffService
  readonly view: TicketView
  readonly sending: boolean
  readonly textRef: Ref<HTMLTextAreaElement>
  readonly onSettle: (body: SettleTicket) => void
}

/** The specialist's answer, in two steps: written, then read once more as the asker will. */
export function SettleForm({ service, view, sending, textRef, onSettle }: SettleFormProps) {
  const rows = useRows('any', key => service.problems(key))
  const problems = rows.kind === 'here' ? rows.value.problems : []
  const [draft, setDraft] = useState<AnswerDraft>(() => readDraft(view.ticket) ?? emptyDraft)
  /** The advice last put in; text equal to it has not been touched and may be replaced. */
  const [putIn, setPutIn] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const [reviewing, setReviewing] = useState(false)
  const heading = useRef<HTMLHeadingElement>(null)
  const { outcome, problem, text } = draft

  const chosen = problems.find(row => row.problem === problem) ?? null
  const change = (part: Partial<AnswerDraft>) => setDraft(before => ({ ...before, ...part }))
  useEffect(() => keepDraft(view.ticket, draft.text === '' && draft.problem === '' ? null : draft), [draft])

  function choose(next: string): void {
    const advice = problems.find(row => row.problem === next)?.advice ?? ''
    const untouched = text.trim() === '' || text === putIn
    change({ problem: next, ...(untouched ? { text: advice } : {}) })
    if (untouched) setPutIn(advice)
    setFault(null)
  }

  function goOn(event: Event): void {
    event.preventDefault()
    const found = outcome === 'problem' && chosen === null ? 'Please choose the problem.' : text.trim() === '' ? 'Please write what the asker should read.' : null
    setFault(found)
    if (found === null) setReviewing(true)
  }

  const leave = () => { setReviewing(false); setTimeout(() => heading.current?.focus()) }
  if (reviewing) {
    return (
      <SettleReview
        title={outcomeInWords(outcome, chosen?.name ?? null)} text={text.trim()} contactGiven={view.case.ticket?.contactGiven ?? false}
        sending={sending} onBack={leave}
        onSend={() => onSettle({ text: text.trim(), outcome: outcome === 'problem' ? { kind: 'problem', problem } : { kind: outcome } })}
      />
    )
  }
  return (
    <form class="step answer-form" noValidate onSubmit={goOn}>
      <h3 tabIndex={-1} ref={heading}>Your answer</h3>
      <fieldset class="outcomes">
        <legend class="hush">What it is</legend>
        {outcomes.map(row => (
          <label key={row.kind}><input type="radio" name="outcome" checked={outcome === row.kind} onChange={() => change({ outcome: row.kind })} /> {row.words}</label>
        ))}
      </fieldset>
      {outcome === 'problem' && (rows.kind === 'failed'
        ? <p class="fault">The list of problems could not be fetched. <button type="button" class="quiet" onClick={rows.again}>Try again</button></p>
        : rows.kind === 'fetching' ? <p class="hint">Fetching the problems …</p>
          : <ProblemChooser problems={problems} plants={plantsOf(view)} differential={view.differential} chosen={problem} onChoose={choose} />)}
      <div class="field">
        <label for="answer-text">What the asker will read</label>
        <textarea
          id="answer-text" ref={textRef} rows={10} maxLength={4000} value={text} onInput={event => change({ text: event.currentTarget.value })}
          onKeyDown={event => { if (event.key === 'Enter' && event.ctrlKey) goOn(event) }}
        />
        {outcome === 'problem' && chosen !== null && text !== chosen.advice && (
          <p><button type="button" class="quiet" onClick={() => { change({ text: chosen.advice }); setPutIn(chosen.advice) }}>Put the guide’s advice in again</button></p>
        )}
        {outcome === 'problem' && chosen !== null && chosen.leftOut.length > 0 && (
          <details class="left-out">
            <summary>Left out of the guide’s advice, because it sends people to a specialist ({chosen.leftOut.length})</summary>
            <ul>{chosen.leftOut.map(sentence => <li key={sentence}>{sentence}</li>)}</ul>
          </details>
        )}
      </div>
      {fault !== null && <p class="fault" role="alert">{fault}</p>}
      <p><button type="submit" class="main">Read it once more before it goes<kbd>Ctrl Enter</kbd></button></p>
    </form>
  )
}

/** The ticket's own plant, or the plants its words may mean. */
function plantsOf({ case: { place } }: TicketView): readonly string[] {
  if (place.host !== null && place.host.host !== UNKNOWN_PLANT) return [place.host.host]
  return [...new Set([...place.entries.map(entry => entry.host), ...place.hosts.map(host => host.host)])].slice(0, 3)
}

const UNKNOWN_PLANT = 'unknown-plant'
const emptyDraft: AnswerDraft = { outcome: 'problem', problem: '', text: '' }
