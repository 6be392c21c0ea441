import type { CheckCard, TurnLine } from '../../../shared/index.js'
import { useWording } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { answerInWords, Told } from './told.js'

interface TurnListProps {
  readonly turns: readonly TurnLine[]
  /** True where number keys open the checks. */
  readonly keyed?: boolean
  /** Opens the check; left out when the sheet can no longer be changed. */
  readonly onLookAt?: ((check: CheckCard) => void) | undefined
  /** Where the check is opened, on a page without script. */
  readonly lookAddress?: ((check: CheckCard) => string) | undefined
}

/** What would turn the answer to another problem, each with the way to look at it. */
export function TurnList({ turns, keyed = false, onLookAt, lookAddress }: TurnListProps) {
  const words = useSheetWording().advice
  const { calm } = useWording()
  if (turns.length === 0) return null
  return (
    <div class="part turns">
      <h4>{words.turns}</h4>
      <ul>
        {turns.map((turn, place) => (
          <li key={`${turn.check.id}/${turn.answer}`}>
            <p>{words.turn(answerInWords(turn.check, turn.answer, calm), turn.check.ask)} <b><Told text={turn.toName} /></b>.</p>
            {lookAddress !== undefined && <p><a href={lookAddress(turn.check)} aria-label={`${words.lookAtTurn}: ${turn.check.ask}`}>{words.lookAtTurn}</a></p>}
            {onLookAt !== undefined && (
              <button type="button" class="quiet" aria-label={`${words.lookAtTurn}: ${turn.check.ask}`} onClick={() => onLookAt(turn.check)}>
                {words.lookAtTurn}{keyed && <kbd>{place + 1}</kbd>}
              </button>
            )}
          </li>
        ))}
      </ul>
    </div>
  )
}
