import type { LikelyLine } from '../../../shared/index.js'
import { Reasons } from '../case/likely-list.js'
import { MovedNote } from '../case/moved-note.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { shareMoves, type ShareMove } from './share-moves.js'

interface WeighedListProps {
  readonly differential: readonly LikelyLine[]
  /** The differential before the last new evidence, or null. */
  readonly before: readonly LikelyLine[] | null
}

/** The causes in order, with what speaks for and against each, and how far the last new evidence moved them. */
export function WeighedList({ differential, before }: WeighedListProps) {
  const wording = useSheetWording()
  const moves = shareMoves(before, differential)
  const weighed = differential.filter(line => line.probability >= WORTH_WEIGHING || moves.has(line.problem))
  const tail = differential.filter(line => !weighed.includes(line))
  if (differential.length === 0) return <p class="hint">Nothing can be weighed before the plant is known.</p>
  return (
    <section class="likely weighed" aria-label="What it could be">
      <h3>What it could be</h3>
      {before !== null && <p class="hint">{moves.size === 0 ? 'The last new evidence moved nothing.' : 'The marks show what the last new evidence moved.'}</p>}
      <ul>
        {weighed.map((line, place) => (
          <li key={line.problem ?? ''}>
            <div class="likely-row">
              <span class="likely-name">{line.problem === null ? wording.likely.somethingElse : line.name}</span>
              <span class="likely-share">
                <Move move={moves.get(line.problem)} /> {wording.advice.share(line.probability)}
              </span>
              <svg class="bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
                <rect class="bar-whole" width="100" height="6" /><rect class="bar-part" width={line.probability * 100} height="6" />
              </svg>
            </div>
            {line.problem !== null && line.what !== '' && <p class="hint">{line.what}</p>}
            <MovedNote moved={line.moved} />
            {place < MOST_REASONED ? <Reasons line={line} /> : (line.for.length > 0 || line.against.length > 0) && (
              <details><summary>{wording.likely.reasons}</summary><Reasons line={line} /></details>
            )}
          </li>
        ))}
      </ul>
      {tail.length > 0 && (
        <details>
          <summary>and {tail.length} more under {WORTH_WEIGHING * 100} %</summary>
          <ul>{tail.map(line => <li key={line.problem ?? ''}>{line.problem === null ? wording.likely.somethingElse : line.name} <span class="origin">{(line.probability * 100).toFixed(1)} in 100</span></li>)}</ul>
        </details>
      )}
    </section>
  )
}

function Move({ move }: { readonly move: ShareMove | undefined }) {
  if (move === undefined) return null
  return <b class="moved"><span aria-hidden="true">{move.up ? '▲' : '▼'}</span> {move.up ? 'up' : 'down'} from {Math.round(move.from * 100)}</b>
}

/** Below this share a cause is only named: reasons for and against it would hide those that matter. */
const WORTH_WEIGHING = 0.01
/** So many causes carry their reasons open. */
const MOST_REASONED = 3
