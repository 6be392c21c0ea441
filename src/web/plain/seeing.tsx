import { renderToString } from 'preact-render-to-string'
import type { SeeingList, SeeingNote } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'

/** One page of what everyone may read. */
export interface SeeingPage {
  readonly list: SeeingList
  /** The week asked for; null for the newest. */
  readonly week: string | null
  /** True inside a page elsewhere: only the note itself, and links that open the whole page. */
  readonly inside: boolean
}

/** Draws 'What we are seeing' without script. Pure. */
export function renderSeeing({ list, week, inside }: SeeingPage): { readonly title: string, readonly html: string } {
  const note = week === null ? list.notes[0] : list.notes.find(one => one.week === week)
  const html = renderToString(
    <article class="sheet seeing" aria-labelledby="seeing-title">
      <header class="sheet-head">
        <h1 id="seeing-title">{note?.title ?? 'What we are seeing'}</h1>
        <p class="sheet-by">{list.helpline}</p>
        {list.demonstration && <p class="sheet-demo">A demonstration. Everything here is invented.</p>}
      </header>
      {note === undefined ? <NoNote asked={week !== null} /> : <Note note={note} inside={inside} />}
      {inside
        ? <footer class="sheet-foot"><p><a href="/seeing" target="_top">The whole page, with earlier weeks</a></p></footer>
        : <Foot list={list} shown={note} />}
    </article>,
  )
  return { title: `${note?.title ?? 'What we are seeing'} – ${list.helpline}`, html }
}

function Note({ note, inside }: { readonly note: SeeingNote, readonly inside: boolean }) {
  return (
    <>
      <div class="step"><p class="seeing-lead">{note.lead}</p></div>
      {note.problems.map(seen => (
        <section key={seen.problem} class="step" aria-labelledby={`seen-${seen.problem}`}>
          <h2 id={`seen-${seen.problem}`}>{seen.name}</h2>
          <p>{seen.text}</p>
          {seen.places.length > 0 && <p class="hint">Reports: {seen.places.map(({ name, count }) => `${name} ${count}`).join(', ')}{seen.total === null ? '' : `; ${seen.total} in all`}.</p>}
        </section>
      ))}
      <div class="step">
        <p class="hint">Read by a specialist before it was shown, {dayInWords(note.updated)}. Small numbers are left out, so that nobody’s garden can be told. It says what people asked us, not how much there is.</p>
        {!inside && <p>Is it your plant? <a href="/ask">Ask us</a>, and we will look at it with you.</p>}
      </div>
    </>
  )
}

function NoNote({ asked }: { readonly asked: boolean }) {
  return (
    <div class="step">
      <p>{asked ? 'There is no note for this week.' : 'There is no note yet. A specialist writes one each week in the growing season.'}</p>
      <p>You can always <a href="/ask" target="_top">ask about your own plant</a>.</p>
    </div>
  )
}

function Foot({ list, shown }: { readonly list: SeeingList, readonly shown: SeeingNote | undefined }) {
  const others = list.notes.filter(one => one.week !== shown?.week)
  return (
    <footer class="sheet-foot">
      {others.length > 0 && (
        <nav aria-labelledby="other-weeks">
          <h2 id="other-weeks" class="kicker">Other weeks</h2>
          <ul>{others.map(one => <li key={one.week}><a href={`/seeing?week=${one.week}`}>{one.title}</a></li>)}</ul>
        </nav>
      )}
      <p>Follow it: <a href="/seeing.atom">Atom feed</a>, <a href="/seeing.json">JSON</a> (<a href="/seeing.schema.json">its schema</a>). For a page of yours: <code>&lt;iframe src="…/seeing/inside"&gt;</code>, where the service allows it.</p>
    </footer>
  )
}
