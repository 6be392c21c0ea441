import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { SettleTicket, TicketView } from '../../../shared/index.js'
import { useRows } from '../case/use-rows.js'
import { enSheet } from '../wording/en-sheet.js'
import type { StaffService } from '../wire/staff-service.js'
import { otherLanguage } from './asker-language.js'
import { draftOfReply, emptyDraft, endOf, keepDraft, readDraft, type AnswerDraft } from './kept-draft.js'
import { isAtOdds, letterBroughtBack, letterFollows, letterOfAdvice, type Letter } from './letter.js'
import { outcomes } from './outcomes.js'
import { plantsFirst } from './plants-first.js'
import { ProblemChooser } from './problem-chooser.js'
import { SettleReview } from './settle-review.js'
import { WorkForm } from './work-form.js'

interface SettleFormProps {
  readonly service: StaffService
  readonly view: TicketView
  readonly sendsMail: boolean
  readonly sending: boolean
  readonly onSend: (body: SettleTicket) => void
  readonly onLeave: () => void
}

/** The specialist's answer, in two steps: written, then read once more as the asker will. A settled one is begun from the answer that stands. */
export function SettleForm({ service, view, sendsMail, sending, onSend, onLeave }: SettleFormProps) {
  const { language } = view.case
  const theirs = otherLanguage(language)
  const rows = useRows('any', key => service.problems(key, language))
  const problems = rows.kind === 'here' ? rows.value.problems : []
  const [draft, setDraft] = useState<AnswerDraft>(() => readDraft(view.ticket) ?? draftOfReply(view.replies.find(reply => reply.stands)) ?? emptyDraft)
  const [fault, setFault] = useState<string | null>(null)
  const [reviewing, setReviewing] = useState(false)
  const text = useRef<HTMLTextAreaElement>(null)
  // At the head of the text, where a greeting goes.
  const toHead = () => { text.current?.setSelectionRange(0, 0); text.current?.scrollTo({ top: 0 }) }
  useLayoutEffect(toHead, [reviewing])
  // Kept as it is drawn, not a moment later: a form left at once would take the moment with it.
  useLayoutEffect(() => keepDraft(view.ticket, draft), [draft])

  const { outcome, problem, letter } = draft
  const problemNamed = (name: string) => problems.find(row => row.problem === name) ?? null
  const chosen = outcome === 'problem' ? problemNamed(problem) : null
  const end = endOf(draft)
  const atOdds = isAtOdds(letter, end)
  const write = (next: Letter) => setDraft(before => ({ ...before, letter: next }))

  /** Chooses an end. The letter follows it, or is asked about. */
  function choose(next: Pick<AnswerDraft, 'outcome' | 'problem'>): void {
    const advice = next.outcome === 'problem' ? problemNamed(next.problem)?.advice ?? '' : ''
    setDraft({ ...next, letter: letterFollows(letter, endOf(next), advice) })
    setFault(null)
    setTimeout(toHead)
  }

  function goOn(): void {
    const found = end === '' ? 'Please choose the problem.'
      : letter.text.trim() === '' ? 'Please write what the asker should read.'
        : atOdds ? 'Please say first whether the text still fits.' : null
    setFault(found)
    if (found === null) setReviewing(true)
  }

  if (reviewing) {
    return (
      <SettleReview
        service={service} view={view} sendsMail={sendsMail} sending={sending} onBack={() => setReviewing(false)} onSend={onSend}
        title={enSheet.after.outcome[outcome](chosen?.name ?? problem)}
        answer={{ text: letter.text.trim(), outcome: outcome === 'problem' ? { kind: 'problem', problem } : { kind: outcome } }}
      />
    )
  }
  return (
    <WorkForm title={view.moves.includes('amend') ? 'Change the answer' : 'Your answer'} submit="Read it once more before it goes" sending={sending} fault={fault} start={problem === '' ? '#problem-words, textarea' : '#answer-text'} onSubmit={goOn} onLeave={onLeave}>
      <fieldset class="outcomes">
        <legend class="hush">What it is</legend>
        {outcomes.map(row => (
          <label key={row.kind}><input type="radio" name="outcome" checked={outcome === row.kind} onChange={() => choose({ outcome: row.kind, problem })} /> {row.words}</label>
        ))}
      </fieldset>
      {outcome === 'problem' && (
        <>
          {rows.kind === 'failed' && <p class="fault">The list of problems could not be fetched. <button type="button" class="quiet" onClick={rows.again}>Try again</button></p>}
          <ProblemChooser problems={problems} plants={plantsFirst(view.case.place)} differential={view.differential} chosen={problem} onChoose={next => choose({ outcome, problem: next })} />
        </>
      )}
      <div class="field">
        <label for="answer-text">What the asker will read</label>
        {theirs !== null && <p class="hint">They read {theirs}. What is put in from the guide is in {theirs}, as far as it is translated.</p>}
        {atOdds && (
          <div class="at-odds" role="alert">
            <p><b>This text was written for “{nameOfEnd(letter.suits)}”.</b> Now it is “{nameOfEnd(end)}”. Does the text still fit?</p>
            <p class="row">
              <button type="button" class="second" onClick={() => write(letterOfAdvice(letter, end, chosen?.advice ?? ''))}>{chosen === null ? 'Begin a new text' : 'Put the guide’s advice in instead'}</button>
              <button type="button" class="second" onClick={() => write({ ...letter, suits: end })}>Keep this text</button>
            </p>
          </div>
        )}
        <textarea id="answer-text" lang={language} ref={text} rows={10} maxLength={4000} value={letter.text} onInput={event => write({ ...letter, text: event.currentTarget.value })} />
        {!atOdds && (
          <p class="row">
            {chosen !== null && letter.text !== chosen.advice && (
              <button type="button" class="quiet" onClick={() => write(letterOfAdvice(letter, end, chosen.advice))}>{letter.putIn === chosen.advice ? 'Put the guide’s advice in again' : 'Put the guide’s advice in'}</button>
            )}
            {letter.replaced !== '' && <button type="button" class="quiet" onClick={() => write(letterBroughtBack(letter, end))}>Bring back the text from before</button>}
          </p>
        )}
        {chosen !== null && chosen.leftOut.length > 0 && (
          <details class="left-out">
            <summary>Left out of the guide’s advice, because it sends people to a specialist ({chosen.leftOut.length})</summary>
            <ul>{chosen.leftOut.map(sentence => <li key={sentence}>{sentence}</li>)}</ul>
          </details>
        )}
      </div>
    </WorkForm>
  )

  function nameOfEnd(of: string): string {
    return problemNamed(of)?.name ?? outcomes.find(row => row.kind === of)?.words ?? of
  }
}
