import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Language, RegionView } from '../../../shared/index.js'
import type { CaseSession, SessionState } from '../case/case-session.js'
import { FlagCards } from '../case/flag-cards.js'
import { lineNumberOf } from '../case/line-number.js'
import { QuestionBox } from '../case/question-box.js'
import { UntranslatedProvider } from '../case/told.js'
import { TroubleNote } from '../case/trouble-note.js'
import { useFocusAfter } from '../case/use-focus-after.js'
import { useSession } from '../case/use-session.js'
import { useSpoken, useWording } from '../wording/language.js'
import type { CaseService } from '../wire/case-service.js'
import type { Aside } from './aside.js'
import { LanguageChoice } from './language-choice.js'
import { Later } from './later.js'
import { loadFilledSheet } from './parts.js'

export interface PanelSheetProps {
  readonly session: CaseSession
  readonly service: CaseService
  readonly region: RegionView | null
  readonly district: string | null
  /** True when the sheet is the whole page, so that printing the page prints the sheet. */
  readonly wholePage: boolean
  /** The asker wants to be spoken to in another language. */
  readonly onLanguage: (language: Language) => void
}

/** The asker's whole sheet, from the empty question to the specialist's answer. */
export function PanelSheet({ session, service, region, district, wholePage, onLanguage }: PanelSheetProps) {
  const { wording: words, language } = useSpoken()
  const state = useSession(session)
  const { view } = state
  const [aside, setAside] = useState<Aside | null>(null)
  const heading = useRef<HTMLHeadingElement>(null)

  // The asker's own turn closes whatever was open beside the step, and only then does focus move.
  const turn = state.ownTurns
  useLayoutEffect(() => setAside(null), [turn, view?.link, view?.language])
  // It waits for the part of the sheet that it is to move to.
  const [isHere, setHere] = useState(false)
  const key = `${turn}/${asideKey(aside)}`
  const shown = useRef(key)
  if (view === null || isHere) shown.current = key
  useFocusAfter(shown.current, heading)

  const untranslated = useMemo(() => new Set(view?.untranslated), [view])
  const onHere = useCallback(() => setHere(true), [])

  return (
    <section class="sheet" aria-labelledby="sheet-title" part="sheet">
      <header class="sheet-head">
        <h2 id="sheet-title" part="title">{words.sheetTitle}</h2>
        {region !== null && <p class="sheet-by">{region.helpline}</p>}
        {region?.demonstration === true && <p class="sheet-demo">{words.demonstration}</p>}
        <LanguageChoice language={language} label={words.languageLabel} onLanguage={onLanguage} />
      </header>
      {state.trouble?.kind === 'gone' && <TroubleNote state={state} session={session} />}
      {view === null
        ? state.errand?.kind === 'load' && state.trouble === null
          ? <p class="step">{words.opening}</p>
          : <QuestionBox region={region} district={district} sending={state.sending} onOpen={session.open} />
        : (
          <UntranslatedProvider value={untranslated}>
            <FlagCards cards={view.cards} newCards={state.newCards} headingRef={view.step.kind === 'red-flag' ? heading : null} />
            <Later
              load={loadFilledSheet} waiting={words.opening} failed={words.trouble.partMissing} again={words.trouble.again} onHere={onHere}
              props={{ view, state, session, service, region, wholePage, aside, setAside, heading }}
            />
          </UntranslatedProvider>
        )}
      {view === null && state.trouble?.kind !== 'gone' && <TroubleNote state={state} session={session} />}
      <Announcer state={state} />
    </section>
  )
}

function asideKey(aside: Aside | null): string {
  return aside === null ? '' : aside.kind === 'line' ? `line ${aside.check.id}` : aside.kind
}

/** Says in one short sentence that the sheet moved on, for those who do not see it. */
function Announcer({ state }: { readonly state: SessionState }) {
  const words = useWording().announce
  const [said, setSaid] = useState('')
  const { view } = state
  const what = view === null ? '' : view.ticket?.reply != null ? words.reply
    : view.step.kind === 'ask' ? view.step.again === null ? words.check(view.lines.length + 1) : words.again(lineNumberOf(view, view.step.check.id))
      : view.step.kind === 'place' ? words.place
        : view.step.kind === 'conclude' ? words.conclude
          : view.step.kind === 'hand-over' ? words.handOver : ''
  const first = useRef(true)
  useEffect(() => {
    // What is there when the sheet opens is no news.
    if (first.current && view === null) return
    if (!first.current) setSaid(what)
    first.current = false
  }, [what, view === null, view?.revision])
  return <p class="hush" aria-live="polite">{said}</p>
}

