import type { ComponentChildren, Ref } from 'preact'
import type { CaseView, CheckCard } from '../../../shared/index.js'
import { LONGEST_WORDS } from './longest-words.js'
import { Told, ToldAnswer } from './told.js'
import { useSentWords } from './use-sent-words.js'
import { useSheetWording } from '../wording/sheet-language.js'

type Question = NonNullable<NonNullable<CaseView['ticket']>['askedBack']>

interface AskedBackProps {
  readonly question: Question
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly onLookAt: (check: CheckCard) => void
  /** Sends an answer in the asker's own words; left out where the sheet takes none now. */
  readonly onWrite: ((words: string) => void) | undefined
  /** How many times the asker has written so far. */
  readonly wordsSoFar: number
  readonly disabled: boolean
  /** The place for photos, when they are wanted. */
  readonly children?: ComponentChildren
}

/** What the specialist wants to know: words, the checks chosen, photos, with a place for an answer in words. Each answer goes to them at once. */
export function AskedBackPart({ question, headingRef, onLookAt, onWrite, wordsSoFar, disabled, children }: AskedBackProps) {
  const words = useSheetWording().askedBack
  const { typed, type, send } = useSentWords(wordsSoFar)
  return (
    <div class="step waiting asked-back">
      <h3 class="step-title" tabIndex={-1} ref={headingRef}>{question.answered ? words.answered : words.title}</h3>
      {question.text !== '' && <p class="letter">{question.text}</p>}
      {question.checks.length > 0 && (
        <section class="unsettled">
          <h4>{words.checks}</h4>
          <ul>
            {question.checks.map(({ check, answer, fresh }) => (
              <li key={check.id}>
                <span><Told text={check.ask} /> {answer !== null && <span class="written"><ToldAnswer check={check} answer={answer} /></span>}{fresh && <span class="origin"> {words.sent}</span>}</span>
                <button type="button" class="quiet" aria-label={`${fresh ? words.change : words.look}: ${check.ask}`} onClick={() => onLookAt(check)}>{fresh ? words.change : words.look}</button>
              </li>
            ))}
          </ul>
        </section>
      )}
      {onWrite !== undefined && (
        <form class="field" onSubmit={event => { event.preventDefault(); if (!disabled) send(onWrite) }}>
          <label for="asked-back-answer">{words.answer}</label>
          <textarea id="asked-back-answer" rows={3} maxLength={LONGEST_WORDS} value={typed} onInput={event => type(event.currentTarget.value)} />
          <p class="row"><button type="submit" class="main" disabled={disabled}>{words.send}</button></p>
        </form>
      )}
      {question.photos && <p>{words.photos}</p>}
      {children}
      <p class="hint">{words.goesAtOnce}</p>
    </div>
  )
}
