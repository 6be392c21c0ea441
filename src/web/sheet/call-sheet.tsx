import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { CaseView, CheckCard, RegionView } from '../../../shared/index.js'
import { AdviceSheet } from '../case/advice-sheet.js'
import { FilledLines } from '../case/filled-lines.js'
import { FlagCards } from '../case/flag-cards.js'
import { HandOverForm, handOverPlace } from '../case/hand-over-form.js'
import { forgetFields, forgetIfSent } from '../case/kept-fields.js'
import { hearingOf } from '../case/hearing.js'
import { LikelyList } from '../case/likely-list.js'
import { lineNumberOf } from '../case/line-number.js'
import { offeredPlaces } from '../case/offered-places.js'
import { PlantPicker } from '../case/plant-picker.js'
import { SampleNote } from '../case/sample-note.js'
import { SimilarSettled } from '../case/similar-settled.js'
import { SpecimenLabel } from '../case/specimen-label.js'
import { UNKNOWN_PLANT } from '../case/unknown-plant.js'
import { TroubleNote } from '../case/trouble-note.js'
import { UnsettledChecks } from '../case/unsettled-checks.js'
import { WatchNotices } from '../case/watch-notices.js'
import { useSession } from '../case/use-session.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'
import { adviceLetterAddress } from './advice-letter.js'
import { BlankCall } from './blank-call.js'
import { useFocusHome } from './focus-home.js'
import { KeyBoard, useKeys, type KeyAction } from './keys.js'
import type { OpenCall } from './open-calls.js'
import { CallerSays, hasEnded, PracticeNotes, usePracticeTruth } from './practice.js'
import { CANT_LOOK_KEY, NOT_SURE_KEY, ReadAloud } from './read-aloud.js'
import { useLastAnswer, type LastAnswer } from './last-answer.js'
import { CANT_LOOK, NOT_SURE } from '../case/told.js'
import { SEEN_KEY, SeenLately, seenWords, useLateNote } from './seen-lately.js'
import { WritingLine } from './writing-line.js'

interface CallSheetProps {
  readonly call: OpenCall
  readonly service: StaffService
  readonly region: RegionView | null
  /** Keys of the desk around this sheet: another call, a new one, the end of this one. */
  readonly deskActions: readonly KeyAction[]
  readonly onDraft: (words: string) => void
  /** Told when the volunteer does anything on this sheet: what the desk said before is then over. */
  readonly onWork: () => void
}

type Aside =
  | { readonly kind: 'words' | 'note' | 'which line' | 'plant' | 'hand over' }
  | { readonly kind: 'line'; readonly check: CheckCard; readonly before: string | null }

/** One call on one sheet, worked by keys alone. */
export function CallSheet({ call, service, region, deskActions, onDraft, onWork }: CallSheetProps) {
  const { session } = call
  const state = useSession(session)
  const { view } = state
  const [aside, setAside] = useState<Aside | null>(null)
  const [handingOver, setHandingOver] = useState(false)
  const heading = useRef<HTMLHeadingElement>(null)
  const sheet = useRef<HTMLElement>(null)
  useLayoutEffect(() => { setAside(null); setHandingOver(false) }, [state.ownTurns])
  const turnsSeen = useRef(state.ownTurns)
  useLayoutEffect(() => {
    if (state.ownTurns > turnsSeen.current) onWork()
    turnsSeen.current = state.ownTurns
  }, [state.ownTurns])
  useLayoutEffect(() => { if (aside !== null || handingOver) onWork() }, [aside, handingOver])
  const goHome = useFocusHome(sheet, `${state.ownTurns}/${aside?.kind ?? ''}/${aside?.kind === 'line' ? aside.check.id : ''}`)
  const lastAnswer = useLastAnswer(view)
  const truth = usePracticeTruth(service, view?.practice ?? null)
  // A practice call is worked without hints.
  const late = useLateNote(service, view === null && call.practice === null && state.errand?.kind !== 'load')
  const [seesLate, setSeesLate] = useState(false)
  useLayoutEffect(() => {
    if (view === null) return
    forgetIfSent(writingPlace(view, 'note'), view.notes.at(-1)?.text)
    forgetIfSent(writingPlace(view, 'words'), view.words.at(-1))
    if (view.ticket !== null) forgetFields(handOverPlace(view.link))
  }, [view])

  const openCheck = view === null ? null : aside?.kind === 'line' ? aside : view.step.kind === 'ask' && aside === null ? { check: view.step.check, before: null } : null
  const answer = (check: CheckCard, label: string) => session.change({ path: 'answers', body: { check: check.id, answer: label } })
  const takeBack = ({ check, before }: LastAnswer) => session.change(
    before === null ? { path: 'take-back', body: { check } } : { path: 'answers', body: { check, answer: before } },
  )
  const settle = (host: string, node: string | null) => session.change({ path: 'place', body: { host, node } })
  const looks = view !== null && aside === null && view.ticket === null ? looksOf(view.step) : []
  const lookAt = (check: CheckCard) => setAside({ kind: 'line', check, before: view?.lines.find(line => line.check.id === check.id)?.answer ?? null })
  const offers = view !== null && view.step.kind === 'place' && aside === null ? offeredPlaces(view.place, view.cards) : []

  const advice = view !== null && aside === null && view.ticket === null && view.practice === null && view.step.kind === 'conclude' ? view.step.card : null
  const letter = advice === null || view === null || region === null ? null : adviceLetterAddress({ card: advice, helpline: region.helpline, link: `${location.origin}/case#${view.link}` })

  const actions: KeyAction[] = []
  if (view !== null) {
    if (openCheck !== null) {
      openCheck.check.answers.forEach((label, place) => actions.push({ key: String(place + 1), words: label, run: () => answer(openCheck.check, label) }))
      actions.push({ key: NOT_SURE_KEY, words: 'not sure', run: () => answer(openCheck.check, NOT_SURE) })
      actions.push({ key: CANT_LOOK_KEY, words: 'can’t look now', run: () => answer(openCheck.check, CANT_LOOK) })
    }
    if (view.step.kind === 'place' && aside === null) actions.push({ key: UNKNOWN_PLANT_KEY, words: 'plant not known', run: () => settle(UNKNOWN_PLANT, null) })
    offers.forEach((offer, place) => actions.push({ key: String(place + 1), words: offer.ofHarm === true ? offer.phrase ?? '' : `${offer.hostName}: ${offer.phrase ?? 'complaint not clear'}`, run: () => settle(offer.host, offer.node) }))
    looks.forEach((check, place) => actions.push({ key: String(place + 1), words: check.ask, run: () => lookAt(check) }))
    if (view.step.kind === 'red-flag' && !view.cards.some(card => card.then === 'stop')) {
      actions.push({ key: 'G', words: 'Go on: the caller has done this', run: () => session.change({ path: 'carry-on', body: {} }) })
    }
    actions.push({ key: 'M', words: 'Make a note', run: () => setAside({ kind: 'note' }) })
    actions.push({ key: 'W', words: 'Write more of the caller’s words', run: () => setAside({ kind: 'words' }) })
    if (lastAnswer !== null && view.ticket?.reply == null) actions.push({ key: 'U', words: `Undo the last answer: ${lastAnswer.answer}`, run: () => takeBack(lastAnswer) })
    if (view.lines.length > 0) actions.push({ key: 'B', words: 'Back to a line, to change it', run: () => setAside({ kind: 'which line' }) })
    actions.push({ key: 'P', words: 'Pick another plant or complaint', run: () => setAside({ kind: 'plant' }) })
    if (advice !== null) {
      actions.push({ key: 'A', words: 'A copy on paper: print the sheet', run: () => window.print() })
      if (letter !== null) actions.push({ key: 'L', words: 'Letter: open it in your mail program', run: () => { location.href = letter } })
    }
    // Asked twice: a form that opens under the fingers of someone who is typing looks like a case handed over.
    if (view.ticket === null && view.practice === null && aside?.kind !== 'hand over') {
      actions.push({
        key: 'H', words: handingOver ? 'Hand over to a specialist: press again' : 'Hand over to a specialist',
        run: () => { if (handingOver) setAside({ kind: 'hand over' }); setHandingOver(!handingOver) },
      })
    }
  }
  if (late !== null) actions.push({ key: SEEN_KEY, words: seenWords(late), run: () => setSeesLate(!seesLate) })
  actions.push(...deskActions)
  const keys = useKeys(actions, () => { setAside(null); setHandingOver(false); onWork(); goHome(true) })
  const isAnswerKey = (action: KeyAction) => /[0-8]/.test(action.key)

  return (
    <div class="call" data-keys>
      <section class="sheet" aria-label={`Call ${call.number}`} tabIndex={-1} ref={sheet}>
        {handingOver && <p class="said" role="status">Press H again to hand this call over to a specialist, or Esc to leave it.</p>}
        {view === null
          ? state.errand?.kind === 'load' ? <p class="step">Fetching the call …</p>
            : <BlankCall service={service} region={region} draft={call.draft} sending={state.sending} practice={call.practice} onDraft={onDraft} onOpen={session.open} />
          : worked(view)}
        <TroubleNote state={state} session={session} />
        {late !== null && <SeenLately late={late} open={seesLate} onTurn={() => setSeesLate(!seesLate)} />}
      </section>
      <KeyBoard actions={actions.filter(action => !isAnswerKey(action))} keys={keys} />
    </div>
  )

  function worked(view: CaseView) {
    const busy = state.sending
    return (
      <>
        <FlagCards cards={view.cards} newCards={state.newCards} />
        <div class="sheet-top">
          <section class="words" aria-label="The caller’s words">
            <h3>The caller’s words</h3>
            {view.words.map((said, place) => <blockquote key={place}>{said}</blockquote>)}
          </section>
          <SpecimenLabel
            view={view} districtName={region?.districts.find(row => row.district === view.district)?.name ?? view.district}
            onChange={() => setAside({ kind: 'plant' })} changeKey="P"
          />
        </div>
        <FilledLines
          lines={view.lines} placed={view.place.host !== null} disabled={busy} again={aside === null && view.step.kind === 'ask' && view.step.again !== null ? view.step.check.id : null}
          onChange={line => lookAt(line.check)}
        />
        {view.notes.length > 0 && (
          <section class="step notes"><h3>Notes</h3><ul>{view.notes.map((note, place) => <li key={place}><span class="written">{note.text}</span> <span class="origin">{momentInWords(note.at)}</span></li>)}</ul></section>
        )}
        {aside !== null && asideParts(view, aside, busy)}
        {truth !== null && aside === null && hasEnded(view) && <PracticeNotes truth={truth} view={view} />}
        {(aside === null || aside.kind === 'note' || aside.kind === 'words' || aside.kind === 'which line') && step(view, busy)}
        {view.practice === null && view.place.host !== null && <SimilarSettled service={service} link={view.link} revision={view.revision} region={region} />}
      </>
    )
  }

  function asideParts(view: CaseView, aside: Aside, busy: boolean) {
    switch (aside.kind) {
      case 'note':
        return <WritingLine key="note" place={writingPlace(view, 'note')} label="Note" save="Keep the note" disabled={busy} onSave={text => session.change({ path: 'notes', body: { text } })} />
      case 'words':
        return <WritingLine key="words" place={writingPlace(view, 'words')} label="More of the caller’s words" save="Add" disabled={busy} onSave={words => session.change({ path: 'words', body: { words } })} />
      case 'which line':
        return (
          <WritingLine key="line" place={writingPlace(view, 'which line')} label={`Which line, 1 to ${view.lines.length}?`} save="Open the line" short disabled={busy} onSave={text => {
            forgetFields(writingPlace(view, 'which line'))
            const line = view.lines[Number(text) - 1]
            if (line !== undefined) lookAt(line.check)
          }} />
        )
      case 'line':
        return (
          <>
            {truth !== null && <CallerSays truth={truth} check={aside.check} />}
            <ReadAloud
              check={aside.check} cards={view.cards} number={lineNumberOf(view, aside.check.id)} left={null} before={aside.before} disabled={busy} headingRef={heading}
              onAnswer={label => answer(aside.check, label)}
            />
          </>
        )
      case 'plant':
        return (
          <div class="step">
            <h2 class="step-title">Which plant, and what is wrong?</h2>
            <p class="hint"><kbd>Enter</kbd> takes the first line.</p>
            <PlantPicker service={service} disabled={busy} startAt={null} onPick={settle} leaveWords="Leave it as it was" onLeave={() => setAside(null)} />
          </div>
        )
      case 'hand over':
        return <HandOverForm link={view.link} disabled={busy} sending={busy} sendsMail={region?.sendsMail ?? false} headingRef={heading} startInField onHandOver={body => session.change({ path: 'hand-over', body })} onLeave={() => setAside(null)} />
    }
  }

  function step(view: CaseView, busy: boolean) {
    if (view.ticket !== null) return handedOver(view)
    const { step } = view
    switch (step.kind) {
      case 'red-flag':
        return (
          <div class="step">
            <h2 class="step-title" tabIndex={-1} ref={heading}>First the card above</h2>
            <p>{view.cards.some(card => card.then === 'stop') ? 'This call stops here. The plant can wait.' : 'Read it to the caller. When they have done it, press G to go on.'}</p>
          </div>
        )
      case 'place':
        return (
          <div class="step">
            <h2 class="step-title" tabIndex={-1} ref={heading}>{offers.length > 0 ? 'What is the call about?' : 'Which plant is it?'}</h2>
            {hearingOf(view.place) === 'out of scope' && <p>This does not sound like a plant question. Ask which plant, lawn or weed it is about, and what they see.</p>}
            {offers.length === 0 && <p>Nothing is settled yet. Press P to pick the plant, or W to write more words.</p>}
            <div class="answers">
              {offers.map((offer, place) => (
                <button type="button" class="answer" key={`${offer.host}/${offer.node ?? ''}`} aria-disabled={busy} onClick={() => settle(offer.host, offer.node)}>
                  <span class="keyed"><kbd>{place + 1}</kbd> <span>{offer.ofHarm !== true && <b>{offer.hostName} </b>}<span class="written">{offer.phrase ?? 'complaint not clear'}</span></span></span>
                </button>
              ))}
              <button type="button" class="answer aside" aria-disabled={busy} onClick={() => settle(UNKNOWN_PLANT, null)}>
                <span class="keyed"><kbd>{UNKNOWN_PLANT_KEY}</kbd> <span>They don’t know what plant it is</span></span>
              </button>
            </div>
          </div>
        )
      case 'ask':
        return aside !== null ? null : (
          <>
            {truth !== null && <CallerSays truth={truth} check={step.check} />}
            <ReadAloud
              check={step.check} cards={view.cards} number={lineNumberOf(view, step.check.id)} left={step.left} again={step.again} isLastLook={step.isLastLook} before={step.again?.said ?? null} disabled={busy} headingRef={heading}
              onAnswer={label => answer(step.check, label)}
            />
          </>
        )
      case 'conclude':
        return (
          <AdviceSheet conclusion={step} askedOn={view.askedOn} headingRef={heading} keyed onLookAt={lookAt}>
            {advice !== null && (
              <p class="row actions">
                <span class="hint">Read it out from the top, or give it to the caller:</span>
                <button type="button" class="second" onClick={() => window.print()}>On paper <kbd>A</kbd></button>
                {letter !== null && <a class="second" href={letter}>By letter <kbd>L</kbd></a>}
              </p>
            )}
          </AdviceSheet>
        )
      case 'hand-over':
        return (
          <div class="step">
            <h2 class="step-title" tabIndex={-1} ref={heading}>We cannot settle this alone</h2>
            <p class="because">{step.because}</p>
            {view.practice === null && <p>Press <kbd>H</kbd> to hand it over.</p>}
            <WatchNotices watched={step.watched} />
            <LikelyList likely={step.likely} title="What it could be" reasons={false} />
            <UnsettledChecks checks={step.unsettled} keyed onLookAt={lookAt} />
            <SampleNote sample={step.sample} />
          </div>
        )
    }
  }

  function handedOver(view: CaseView) {
    const { ticket } = view
    if (ticket === null) return null
    return (
      <div class="step">
        <h2 class="step-title" tabIndex={-1} ref={heading}>{ticket.reply === null ? 'Handed over to a specialist' : 'A specialist has answered'}</h2>
        {ticket.reply !== null
          ? <><p class="because">{ticket.reply.problemName}</p><p class="letter">{ticket.reply.text}</p></>
          : (
            <>
              <p>{!ticket.contactGiven ? 'No contact was given: read the caller their private link, or call them back yourself.' : region?.sendsMail === true ? 'The specialist has the caller’s contact.' : 'The specialist has the caller’s contact, but no mail goes out from here: read the caller their private link.'}</p>
              <p>Private link: <span class="written">{`${location.origin}/case#${view.link}`}</span></p>
            </>
          )}
      </div>
    )
  }
}

/** Key of the tree for plants that nobody can name. */
const UNKNOWN_PLANT_KEY = '0'

/** The name of a field of this call, by which what is written in it is kept while it is left. */
function writingPlace({ link }: CaseView, field: 'note' | 'words' | 'which line'): string {
  return `call ${link}, ${field}`
}

/** The looks a step offers besides, in the order of their number keys. */
function looksOf(step: CaseView['step']): readonly CheckCard[] {
  return step.kind === 'conclude' ? step.turns.map(turn => turn.check) : step.kind === 'hand-over' ? step.unsettled : []
}
