import type { CheckCard, ChecksLeft, FlagCard, SecondLookNote } from '../../../shared/index.js'
import { SecondLook } from '../case/check-line.js'
import { LookDrawing } from '../case/look-drawing.js'
import { LookSafely } from '../case/look-safely.js'
import { CANT_LOOK, NOT_SURE, Told, ToldAnswer } from '../case/told.js'
import { usePlainWording } from '../wording/plain-language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { NOW, plainAddress } from './page.js'
import { AnswerButton, PlainForm } from './plain-form.js'

interface PlainCheckProps {
  readonly link: string
  readonly revision: number
  readonly check: CheckCard
  /** The cards of the case: some say how to look without coming to harm. */
  readonly cards: readonly FlagCard[]
  readonly number: number
  readonly left: ChecksLeft | null
  readonly again: SecondLookNote | null
  /** Set when the look is for the specialist who will have the case. */
  readonly isLastLook?: boolean
  /** The answer given before, when an earlier line is open again. */
  readonly before: string | null
  /** True where the sheet goes on without an answer to this one. */
  readonly mayLeave: boolean
}

/** One check open for an answer: how to look, why, the answers, and the two calm ways past it. */
export function PlainCheck({ link, revision, check, cards, number, left, again, isLastLook = false, before, mayLeave }: PlainCheckProps) {
  const words = useSheetWording().check
  const plain = usePlainWording()
  const note = (label: string) => label === before ? words.before : null
  const kind = (label: string) => label === before ? 'answer marked' : 'answer'
  return (
    <div class="check" id={NOW}>
      <span class="number" aria-hidden="true">{number}</span>
      <div class="check-body">
        <p class="kicker">{again === null ? words.line(number) : words.lineAgain(number)}. {(before === null || again !== null) && words.left(left)}</p>
        {again !== null && <SecondLook check={check} again={again} />}
        {isLastLook && <p class="told-apart">{words.lastLook}</p>}
        <h2 class="step-title" id="check-ask"><Told text={check.ask} /></h2>
        <LookSafely cards={cards} />
        <LookDrawing check={check.id} />
        <dl class="looking">
          <div><dt>{words.how}</dt><dd><Told text={check.how} /></dd></div>
          <div><dt>{words.why}</dt><dd><Told text={check.why} /></dd></div>
        </dl>
        <PlainForm link={link} change="answers" revision={revision} label={check.ask}>
          <input type="hidden" name="check" value={check.id} />
          <div class="answers">{check.answers.map(label => <AnswerButton key={label} value={label} note={note(label)} class={kind(label)}><ToldAnswer check={check} answer={label} /></AnswerButton>)}</div>
          <div class="answers calm">
            <AnswerButton value={NOT_SURE} note={note(NOT_SURE)} class={kind(NOT_SURE)}>{words.notSure}</AnswerButton>
            <AnswerButton value={CANT_LOOK} note={note(CANT_LOOK)} class={kind(CANT_LOOK)}>{words.cantLook}</AnswerButton>
            <p class="hint">{isLastLook ? words.lastCalm : words.calm}</p>
          </div>
        </PlainForm>
        {mayLeave && <p><a href={plainAddress(link)}>{before === null ? plain.back : words.keep}</a></p>}
      </div>
    </div>
  )
}
