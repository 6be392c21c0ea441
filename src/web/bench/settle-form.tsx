import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { SettleTicket, TicketView } from '../../../shared/index.js'
import { useRows } from '../case/use-rows.js'
import type { StaffService } from '../wire/staff-service.js'
import { draftOfReply, emptyDraft, keepDraft, readDraft, type AnswerDraft } from './kept-draft.js'
import { outcomeInWords, outcomes } from './outcomes.js'
import { plantsFirst } from './plants-first.js'
import { ProblemChooser } from './problem-chooser.js'
import { SettleReview } from './settle-review.js'
import { WorkForm } from './work-form.js'

interface SettleFormProps {
  readonly service: StaffService
  readonly view: TicketView
  readonly sending: boolean
  readonly onSend: (body: SettleTicket) => void
  readonly onLeave: () => void
}

/** The specialist's answer, in two steps: written, then read once more as the asker will. A settled one is begun from the answer that stands. */
export function SettleForm({ service, view, sending, onSend, onLeave }: SettleFormProps) {
  const rows = useRows('any', key => service.problems(key))
  const problems = rows.kind === 'here' ? rows.value.problems : []
  const [draft, setDraft] = useState<AnswerDraft>(() => readDraft(view.ticket) ?? draftOfReply(view.replies.find(reply => reply.stands)) ?? emptyDraft)
  /** The advice last put in; text equal to it has not been touched and may be replaced. */
  const [putIn, setPutIn] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const [reviewing, setReviewing] = useState(false)
  const text = useRef<HTMLTextAreaElement>(null)
  // At the head of the text, where a greeting goes.
  const toHead = () => { text.current?.setSelectionRange(0, 0); text.current?.scrollTo({ top: 0 }) }
  useLayoutEffect(toHead, [reviewing])

  const { outcome, problem } = draft
  const chosen = problems.find(row => row.problem === problem) ?? null
  const change = (part: Partial<AnswerDraft>) => setDraft(before => ({ ...before, ...part }))
  const advise = (advice: string) => { change({ text: advice }); setPutIn(advice) }
  useEffect(() => keepDraft(view.ticket, draft), [draft])

  function choose(next: string): void {
    const advice = problems.find(row => row.problem === next)?.advice ?? ''
    change({ problem: next })
    if (draft.text.trim() === '' || draft.text === putIn) advise(advice)
    setFault(null)
    setTimeout(toHead)
  }

  function goOn(): void {
    const found = outcome === 'problem' && problem === '' ? 'Please choose the problem.' : draft.text.trim() === '' ? 'Please write what the asker should read.' : null
    setFault(found)
    if (found === null) setReviewing(true)
  }

  if (reviewing) {
    return (
      <SettleReview
        service={service} view={view} sending={sending} onBack={() => setReviewing(false)} onSend={onSend}
        title={outcomeInWords(outcome, chosen?.name ?? problem)}
        answer={{ text: draft.text.trim(), outcome: outcome === 'problem' ? { kind: 'problem', problem } : { kind: outcome } }}
      />
    )
  }
  return (
    <WorkForm title={view.moves.includes('amend') ? 'Change the answer' : 'Your answer'} submit="Read it once more before it goes" sending={sending} fault={fault} start={problem === '' ? '#problem-words, textarea' : '#answer-text'} onSubmit={goOn} onLeave={onLeave}>
      <fieldset class="outcomes">
        <legend class="hush">What it is</legend>
        {outcomes.map(row => (
          <label key={row.kind}><input type="radio" name="outcome" checked={outcome === row.kind} onChange={() => change({ outcome: row.kind })} /> {row.words}</label>
        ))}
      </fieldset>
      {outcome === 'problem' && (
        <>
          {rows.kind === 'failed' && <p class="fault">The list of problems could not be fetched. <button type="button" class="quiet" onClick={rows.again}>Try again</button></p>}
          <ProblemChooser problems={problems} plants={plantsFirst(view.case.place)} differential={view.differential} chosen={problem} onChoose={choose} />
        </>
      )}
      <div class="field">
        <label for="answer-text">What the asker will read</label>
        <textarea id="answer-text" ref={text} rows={10} maxLength={4000} value={draft.text} onInput={event => change({ text: event.currentTarget.value })} />
        {outcome === 'problem' && chosen !== null && draft.text !== chosen.advice && (
          <p><button type="button" class="quiet" onClick={() => advise(chosen.advice)}>Put the guide’s advice in again</button></p>
        )}
        {outcome === 'problem' && chosen !== null && chosen.leftOut.length > 0 && (
          <details class="left-out">
            <summary>Left out of the guide’s advice, because it sends people to a specialist ({chosen.leftOut.length})</summary>
            <ul>{chosen.leftOut.map(sentence => <li key={sentence}>{sentence}</li>)}</ul>
          </details>
        )}
      </div>
    </WorkForm>
  )
}
