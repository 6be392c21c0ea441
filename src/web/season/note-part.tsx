import { useEffect, useState } from 'preact/hooks'
import type { NoteText, NoteView } from '../../../shared/index.js'
import { momentInWords, weekInWords } from '../wording/day.js'

interface NotePartProps {
  readonly view: NoteView
  readonly mayWrite: boolean
  readonly sending: boolean
  readonly fault: string | null
  readonly onApprove: (note: NoteText) => void
  readonly onTakeBack: () => void
}

/** The week's note for everyone: drafted by the service, changed and approved by a specialist, taken back when need be. */
export function NotePart({ view, mayWrite, sending, fault, onApprove, onTakeBack }: NotePartProps) {
  const { published, draft, leastCount } = view
  const [note, setNote] = useState<NoteText>(() => startOf(view))
  // Another week, or a newer word on this one: begin from that.
  useEffect(() => setNote(startOf(view)), [view.week, published?.updated])
  const nameOf = (problem: string) => view.names[problem] ?? problem
  const change = (place: number, text: string) => setNote({ ...note, problems: note.problems.map((one, at) => at === place ? { ...one, text } : one) })
  const drop = (place: number) => setNote({ ...note, problems: note.problems.filter((_, at) => at !== place) })
  const isEmpty = note.lead.trim() === '' || note.problems.some(({ text }) => text.trim() === '')
  return (
    <>
      <p>{weekInWords(view.monday)}. {published === null
        ? 'Nobody else can read this week’s note yet.'
        : <>Published: <a href={`/seeing?week=${view.week}`}>see it as everyone does</a>. It can be printed from there.</>}</p>
      {!mayWrite && published === null && <p>A specialist writes it.</p>}
      {mayWrite && (
        <form class="note-form" noValidate onSubmit={event => { event.preventDefault(); if (!isEmpty && !sending) onApprove(note) }}>
          <p class="hint">The service drafted this from the week’s reports. Read it, change what is not right, and leave out what should not be said. No count under {leastCount} is shown, by district or in all.</p>
          <div class="field">
            <label for="note-lead">To begin with</label>
            <textarea id="note-lead" rows={2} maxLength={1200} value={note.lead} onInput={event => setNote({ ...note, lead: event.currentTarget.value })} />
          </div>
          {note.problems.map((one, place) => (
            <div class="field" key={one.problem}>
              <label for={`note-${one.problem}`}>{nameOf(one.problem)}</label>
              <textarea id={`note-${one.problem}`} rows={3} maxLength={1200} value={one.text} onInput={event => change(place, event.currentTarget.value)} />
              <p><button type="button" class="quiet" onClick={() => drop(place)}>Leave out {nameOf(one.problem)}</button></p>
            </div>
          ))}
          {note.problems.length === 0 && <p>No problem was reported often enough to be named.</p>}
          {isEmpty && <p class="fault">An empty text cannot be shown. Write something, or leave the problem out.</p>}
          {fault !== null && <p class="fault" role="alert">{fault}</p>}
          <p class="row">
            <button type="submit" class="main" aria-disabled={sending || isEmpty}>{published === null ? 'Approve: let everyone read it' : 'Approve these changes'}</button>
            <button type="button" class="quiet" onClick={() => setNote(draft)}>Begin again from the draft</button>
            {published !== null && <button type="button" class="second" aria-disabled={sending} onClick={onTakeBack}>Take it back</button>}
          </p>
        </form>
      )}
      {view.history.length > 0 && (
        <ol class="note-history">{view.history.map((one, place) => <li key={place} class="origin">{one.what === 'approved' ? 'Approved' : 'Taken back'} by {one.by}, {momentInWords(one.at)}</li>)}</ol>
      )}
    </>
  )
}

function startOf({ published, draft }: NoteView): NoteText {
  return published === null ? draft : { lead: published.lead, problems: published.problems.map(({ problem, text }) => ({ problem, text })) }
}
