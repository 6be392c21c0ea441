import type { LikelyLine, ReasonLine } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { MovedNote } from './moved-note.js'
import { Told } from './told.js'

/**
 * Problems in order of how likely they are: a plain bar with its number.
 * With `reasons`, for specialists, all of them and what speaks for and against; without, only the few worth a thought.
 */
export function LikelyList({ likely, title, reasons }: { readonly likely: readonly LikelyLine[], readonly title: string, readonly reasons: boolean }) {
  const wording = useSheetWording()
  const shown = reasons ? likely : likely.filter(line => line.probability >= LEAST_SHARE_SHOWN).slice(0, MOST_SHOWN)
  if (shown.length === 0) return null
  return (
    <section class="likely">
      <h4>{title}</h4>
      <ul>
        {shown.map((line, place) => (
          <li key={line.problem ?? ''}>
            <div class="likely-row">
              <span class="likely-name">{line.problem === null ? wording.likely.somethingElse : <Told text={line.name} />}</span>
              <span class="likely-share">{wording.advice.share(line.probability)}</span>
              <svg class="bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
                <rect class="bar-whole" width="100" height="6" /><rect class="bar-part" width={line.probability * 100} height="6" />
              </svg>
            </div>
            {line.problem !== null && line.what !== '' && <p class="hint"><Told text={line.what} /></p>}
            <MovedNote moved={line.moved} />
            {reasons && (place < MOST_REASONED ? <Reasons line={line} /> : <FoldedReasons line={line} />)}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Reasons that stand in nobody's way: who weighs an unlikely cause opens them. */
function FoldedReasons({ line }: { readonly line: LikelyLine }) {
  const words = useSheetWording().likely
  if (line.for.length === 0 && line.against.length === 0) return null
  return <details><summary>{words.reasons}</summary><Reasons line={line} /></details>
}

/** The findings for and against one problem. */
export function Reasons({ line }: { readonly line: LikelyLine }) {
  const words = useSheetWording().advice
  if (line.for.length === 0 && line.against.length === 0) return null
  return (
    <div class="reasons">
      {line.for.length > 0 && <ReasonGroup title={words.for} mark="+" rows={line.for} />}
      {line.against.length > 0 && <ReasonGroup title={words.against} mark="−" rows={line.against} />}
    </div>
  )
}

function ReasonGroup({ title, mark, rows }: { readonly title: string, readonly mark: string, readonly rows: readonly ReasonLine[] }) {
  const words = useSheetWording().advice
  return (
    <div>
      <h5>{title}</h5>
      <ul class="reason-list">
        {rows.map(reason => (
          <li key={reason.check}>
            <span class="reason-mark" aria-hidden="true">{mark}</span>
            <span><Told text={reason.ask} /> <span class="written"><Told text={reason.answer} /></span>{reason.seen !== null && <span class="origin">{words.seen(reason.seen)}</span>}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}

/** Below one in twenty a cause is more worry than help to an asker. */
const LEAST_SHARE_SHOWN = 0.05
const MOST_SHOWN = 3
/** So many causes carry their reasons open. */
const MOST_REASONED = 3
