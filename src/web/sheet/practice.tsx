import { useEffect, useState } from 'preact/hooks'
import type { CaseView, CheckCard, PracticeTruth } from '../../../shared/index.js'
import { NOT_SURE } from '../case/told.js'
import type { StaffService } from '../wire/staff-service.js'

/** What a practice call's caller sees, or null until it is fetched; `practice` null for a real call. */
export function usePracticeTruth(service: Pick<StaffService, 'practiceTruth'>, practice: string | null): PracticeTruth | null {
  const [truth, setTruth] = useState<PracticeTruth | null>(null)
  useEffect(() => {
    let here = true
    setTruth(null)
    if (practice !== null) void service.practiceTruth(practice).then(reply => { if (here && reply.ok) setTruth(reply.value) })
    return () => { here = false }
  }, [service, practice])
  return truth
}

/** What the caller of a practice call says to an open check. */
export function CallerSays({ truth, check }: { readonly truth: PracticeTruth, readonly check: CheckCard }) {
  const said = answerOf(truth, check.id)
  return (
    <p class="caller-says" role="status">
      <b>Practice: the caller says</b> <span class="written">{said === NOT_SURE ? 'I am not sure, I can’t tell.' : said}</span>
    </p>
  )
}

/** How a practice call went, once the sheet has come to its end. */
export function PracticeNotes({ truth, view }: { readonly truth: PracticeTruth, readonly view: CaseView }) {
  const verdict = verdictOf(truth, view)
  const odd = view.lines.filter(line => line.answer !== answerOf(truth, line.check.id))
  return (
    <section class="step practice-notes" aria-label="How it went">
      <h3>How it went</h3>
      <p class={verdict.right ? 'went-well' : 'went-wrong'}><b>{verdict.right ? 'Right.' : 'Not as it was.'}</b> {verdict.words}</p>
      {truth.hostName !== null && view.place.host !== null && view.place.host.name !== truth.hostName
        && <p>The plant was: {truth.hostName}. You worked on: {view.place.host.name}.</p>}
      {odd.length > 0 && (
        <>
          <h4>Lines that the caller would have answered otherwise</h4>
          <ul>{odd.map(line => <li key={line.check.id}>{line.check.ask} You wrote <span class="written">{line.answer}</span>, the caller says <span class="written">{answerOf(truth, line.check.id)}</span>.</li>)}</ul>
        </>
      )}
      <p class="hint">{countInWords(view.lines.length)}</p>
    </section>
  )
}

/** Whether a sheet has ended where the worked case did, and what to say of it. Exported for its test. */
export function verdictOf(truth: PracticeTruth, view: Pick<CaseView, 'step' | 'cards'>): { readonly right: boolean; readonly words: string } {
  const { ends } = truth
  switch (ends.kind) {
    case 'red flag': {
      const raised = view.cards.some(card => card.id === ends.redFlag)
      return { right: raised, words: raised ? `The danger was heard: ${ends.title}.` : `This was a danger first of all: ${ends.title}.` }
    }
    case 'hand over':
      return view.step.kind === 'conclude'
        ? { right: false, words: `The sheet came to ${view.step.card.name}. In truth nobody could tell, and it went to a specialist.` }
        : { right: true, words: 'Nobody could tell, and it went to a specialist.' }
    case 'problem': {
      if (view.step.kind !== 'conclude') return { right: false, words: `It was ${ends.name}. The sheet did not come to it: look at the lines again.` }
      const { problem, name } = view.step.card
      const right = problem === ends.problem || ends.alsoRight.some(other => other.problem === problem)
      return { right, words: right ? `It was ${name}.` : `It was ${ends.name}. The sheet came to ${name}.` }
    }
  }
}

/** True where a practice call has come to its end. */
export function hasEnded({ step }: Pick<CaseView, 'step'>): boolean {
  return step.kind === 'conclude' || step.kind === 'hand-over' || step.kind === 'red-flag'
}

function answerOf(truth: PracticeTruth, check: string): string {
  return truth.answers.find(one => one.check === check)?.answer ?? NOT_SURE
}

function countInWords(lines: number): string {
  return lines === 1 ? 'One line was filled in.' : `${lines} lines were filled in.`
}
