import type { ComponentChildren, Ref } from 'preact'
import type { CheckCard, ChecksLeft, FlagCard, SecondLookNote } from '../../../shared/index.js'
import { LookDrawing } from './look-drawing.js'
import { LookSafely } from './look-safely.js'
import { answerInWords, CANT_LOOK, NOT_SURE, Told, ToldAnswer } from './told.js'
import { useWording } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'

interface CheckLineProps {
  readonly check: CheckCard
  /** The cards of the case: some say how to look without coming to harm. */
  readonly cards: readonly FlagCard[]
  readonly number: number
  readonly left: ChecksLeft | null
  /** The answer given before, when an earlier line is open again. */
  readonly before?: string | null
  /** Set when the answer is doubted and the check asked once more. */
  readonly again?: SecondLookNote | null
  /** Set when the look is for the specialist who will have the case. */
  readonly isLastLook?: boolean
  /** The answer on its way or kept for later. */
  readonly sending?: string | null
  readonly disabled: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly onAnswer: (answer: string) => void
  readonly onLeave?: (() => void) | undefined
}

/** One check open for an answer: how to look, why, the answers, and the two calm ways past it. */
export function CheckLine(props: CheckLineProps) {
  const { check, cards, number, left, again = null, isLastLook = false, before = again?.said ?? null, sending = null, disabled, headingRef, onAnswer, onLeave } = props
  const words = useSheetWording().check
  const answer = (label: string, shown: ComponentChildren = <ToldAnswer check={check} answer={label} />) => (
    <button
      type="button" key={label} aria-disabled={disabled} onClick={() => onAnswer(label)}
      class={label === before || label === sending ? 'answer marked' : 'answer'}
    >
      <span class="answer-words">{shown}</span>
      {label === before && <span class="answer-note">{words.before}</span>}
    </button>
  )
  return (
    <div class="check">
      <span class="number" aria-hidden="true">{number}</span>
      <div class="check-body">
        <p class="kicker">{again === null ? words.line(number) : words.lineAgain(number)}. {(before === null || again !== null) && words.left(left)}</p>
        {again !== null && <SecondLook check={check} again={again} />}
        {isLastLook && <p class="told-apart">{words.lastLook}</p>}
        <h3 class="step-title" tabIndex={-1} ref={headingRef} id="check-ask"><Told text={check.ask} /></h3>
        <LookSafely cards={cards} />
        <LookDrawing check={check.id} />
        <dl class="looking">
          <div><dt>{words.how}</dt><dd><Told text={check.how} /></dd></div>
          <div><dt>{words.why}</dt><dd><Told text={check.why} /></dd></div>
        </dl>
        <div class="answers" role="group" aria-labelledby="check-ask">
          {check.answers.map(label => answer(label))}
        </div>
        <div class="answers calm" role="group" aria-label={isLastLook ? words.lastCalm : words.calm}>
          {answer(NOT_SURE, words.notSure)}
          {answer(CANT_LOOK, words.cantLook)}
          <p class="hint">{isLastLook ? words.lastCalm : words.calm}</p>
        </div>
        {onLeave !== undefined && (
          <p><button type="button" class="quiet" onClick={onLeave}>{before === null ? words.later : words.keep}</button></p>
        )}
      </div>
    </div>
  )
}

/** Why a check is asked once more, without blame. */
export function SecondLook({ check, again }: { readonly check: CheckCard, readonly again: SecondLookNote }) {
  const words = useSheetWording().check
  const { calm } = useWording()
  return (
    <div class="second-look">
      <p>{words.again(answerInWords(check, again.said, calm), again.problemName, answerInWords(check, again.usual, calm))}</p>
      <p class="hint">{words.againCalm}</p>
    </div>
  )
}
