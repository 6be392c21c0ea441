import type { Ref } from 'preact'
import type { CheckCard, ChecksLeft, FlagCard, SecondLookNote } from '../../../shared/index.js'
import { SecondLook } from '../case/check-line.js'
import { LookSafely } from '../case/look-safely.js'
import { CANT_LOOK, NOT_SURE } from '../case/told.js'
import { useSheetWording } from '../wording/sheet-language.js'

interface ReadAloudProps {
  readonly check: CheckCard
  /** The cards of the case: some say how to look without coming to harm. */
  readonly cards: readonly FlagCard[]
  readonly number: number
  readonly left: ChecksLeft | null
  /** Set when the answer is doubted and the check asked once more. */
  readonly again?: SecondLookNote | null
  /** Set when the look is for the specialist who will have the case. */
  readonly isLastLook?: boolean
  readonly before: string | null
  readonly disabled: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly onAnswer: (answer: string) => void
}

/** Keys of the two answers that are always there, beside 1 to 6 for the check's own. */
export const NOT_SURE_KEY = '7'
export const CANT_LOOK_KEY = '8'

/** A check as it is read to a caller, and its answers by number. */
export function ReadAloud({ check, cards, number, left, again = null, isLastLook = false, before, disabled, headingRef, onAnswer }: ReadAloudProps) {
  const words = useSheetWording().check
  const rows = [
    ...check.answers.map((label, place) => ({ label, key: String(place + 1) })),
    { label: NOT_SURE, key: NOT_SURE_KEY },
    { label: CANT_LOOK, key: CANT_LOOK_KEY },
  ]
  return (
    <div class="check read-aloud">
      <span class="number" aria-hidden="true">{number}</span>
      <div class="check-body">
        <p class="kicker">Line {number}{again !== null && ', once more'}. Read to the caller{before === null && left !== null && ` (${left.least === left.most ? left.least : `${left.least} to ${left.most}`} to go)`}</p>
        {again !== null && <SecondLook check={check} again={again} />}
        {isLastLook && <p class="told-apart">{words.lastLook}</p>}
        <h2 class="step-title" tabIndex={-1} ref={headingRef} id="check-ask">{check.ask}</h2>
        <LookSafely cards={cards} />
        <p class="spoken">{check.how}</p>
        <p class="hint">If they ask why: {check.why}</p>
        <div class="answers" role="group" aria-labelledby="check-ask">
          {rows.map(row => (
            <button
              type="button" key={row.label} aria-disabled={disabled} onClick={() => onAnswer(row.label)}
              class={`answer ${row.label === before ? 'marked' : ''} ${row.key === NOT_SURE_KEY || row.key === CANT_LOOK_KEY ? 'aside' : ''}`}
            >
              <span class="keyed"><kbd>{row.key}</kbd> <span class="answer-words">{row.label}</span></span>
              {row.label === before && <span class="answer-note">the answer so far</span>}
            </button>
          ))}
        </div>
      </div>
    </div>
  )
}
