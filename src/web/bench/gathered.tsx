import type { RegionView, TicketView } from '../../../shared/index.js'
import { FilledLines } from '../case/filled-lines.js'
import { SpecimenLabel } from '../case/specimen-label.js'
import { WatchNotices } from '../case/watch-notices.js'
import { momentInWords } from '../wording/day.js'
import { otherLanguage } from './asker-language.js'
import { PlaceGuesses } from './place-guesses.js'

/** Everything gathered so far: the asker's words, the label, the filled-in lines with where each came from, and the notes of the call. */
export function Gathered({ view, region }: { readonly view: TicketView, readonly region: RegionView | null }) {
  const { case: file } = view
  const language = otherLanguage(file.language)
  return (
    <>
      <div class="sheet-top">
        <section class="words" aria-label="In their words">
          <h3>In their words</h3>
          {language !== null && <p class="asked-in"><b class="mark">Asked in {language}</b> The sheet and the letters speak {language} to them; you see the guide in English.</p>}
          {file.words.map((words, place) => <blockquote key={place} lang={file.language}>{words}</blockquote>)}
          {view.note !== null && view.note !== '' && <><h3>On handing over</h3><blockquote>{view.note}</blockquote></>}
        </section>
        <SpecimenLabel view={file} districtName={region?.districts.find(row => row.district === file.district)?.name ?? file.district} />
      </div>
      <PlaceGuesses view={file} />
      {file.lines.length === 0 ? <div class="step"><p class="hint">No check was answered.</p></div> : <FilledLines lines={file.lines} placed={file.place.host !== null} />}
      {file.notes.length > 0 && (
        <section class="step notes">
          <h3>Notes of the call</h3>
          <ul>{file.notes.map((note, place) => <li key={place}><span class="written">{note.text}</span> <span class="origin">{momentInWords(note.at)}</span></li>)}</ul>
        </section>
      )}
      {'watched' in file.step && file.step.watched.length > 0 && <div class="step"><WatchNotices watched={file.step.watched} /></div>}
    </>
  )
}
