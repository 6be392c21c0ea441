import type { WatchLine } from '../../../shared/index.js'
import { useWording } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { PhoneLink } from './flag-cards.js'
import { MovedNote } from './moved-note.js'
import { Told } from './told.js'

/** Problems that must be reported and cannot be ruled out, each in its own box, however unlikely. */
export function WatchNotices({ watched }: { readonly watched: readonly WatchLine[] }) {
  const { call } = useWording().flags
  const words = useSheetWording()
  return (
    <>
      {watched.map(line => (
        <section class="report watched" key={line.problem} aria-labelledby={`watched-${line.problem}`}>
          <h4 id={`watched-${line.problem}`}>{words.watched.title}: <Told text={line.name} /></h4>
          <p><Told text={line.escalate} /></p>
          {line.call !== null && <p><PhoneLink name={line.call.name} number={line.call.number} verb={call} /></p>}
          <MovedNote moved={line.moved} />
          <p class="hint">{words.advice.sure}: {words.advice.share(line.probability)}. {words.watched.why}</p>
        </section>
      ))}
    </>
  )
}
