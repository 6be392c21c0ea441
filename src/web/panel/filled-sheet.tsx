import type { RefObject } from 'preact'
import { useCallback, useEffect } from 'preact/hooks'
import type { CaseView, CheckCard, RegionView } from '../../../shared/index.js'
import { AfterHandOver } from '../case/after-hand-over.js'
import { answerOnItsWay } from '../case/answer-on-its-way.js'
import type { CaseSession, SessionState } from '../case/case-session.js'
import { CheckLine } from '../case/check-line.js'
import { FilledLines } from '../case/filled-lines.js'
import { handOverPlace } from '../case/hand-over-form.js'
import { hearingOf } from '../case/hearing.js'
import { forgetFields } from '../case/kept-fields.js'
import { PhotoBox } from '../case/photo-box.js'
import { PlantPicker } from '../case/plant-picker.js'
import { QuestionBox } from '../case/question-box.js'
import { SpecimenLabel } from '../case/specimen-label.js'
import { TroubleNote } from '../case/trouble-note.js'
import { usePhotoUploads } from '../case/use-photo-uploads.js'
import { useSheetWording } from '../wording/sheet-language.js'
import type { CaseService } from '../wire/case-service.js'
import type { Aside } from './aside.js'
import { useFilledStyle } from './filled-style.js'
import { MoreWords } from './more-words.js'
import { PanelStep } from './panel-step.js'

interface FilledSheetProps {
  readonly view: CaseView
  readonly state: SessionState
  readonly session: CaseSession
  readonly service: CaseService
  readonly region: RegionView | null
  readonly wholePage: boolean
  readonly aside: Aside | null
  readonly setAside: (aside: Aside | null) => void
  readonly heading: RefObject<HTMLHeadingElement | null>
}

/** The sheet of an open case below its cards: the words, the label, the lines, and the step it is at. */
export function FilledSheet({ view, state, session, service, region, wholePage, aside, setAside, heading }: FilledSheetProps) {
  const words = useSheetWording()
  const style = useFilledStyle()
  const busy = state.sending
  useEffect(() => { if (view.ticket !== null) forgetFields(handOverPlace(view.link)) }, [view])
  const photos = usePhotoUploads(service, view.link, session.takeOver)
  const look = useCallback(() => session.lookForNews(), [session])
  const districtName = region?.districts.find(row => row.district === view.district)?.name ?? view.district ?? null
  // While a card is the one thing to attend to, nothing of the plant is in its way.
  const cardFirst = view.step.kind === 'red-flag'
  const isStopped = view.step.kind === 'red-flag' && view.cards.some(card => card.then === 'stop')
  const mayChange = view.ticket?.reply == null && !isStopped
  const openLine = aside?.kind === 'line' ? aside : null
  // A sheet with a card or a ticket on it is kept; one with nothing but words we cannot answer is begun anew.
  const isOutOfScope = view.step.kind === 'place' && view.ticket === null && view.cards.length === 0 && hearingOf(view.place) === 'out of scope'
  const addWords = (said: string) => session.change({ path: 'words', body: { words: said } })
  const lineChange = (check: CheckCard, before: string | null) => setAside({ kind: 'line', check, before })
  const checkLine = (check: CheckCard, number: number, before: string | null) => (
    <CheckLine
      check={check} cards={view.cards} number={number} left={null} before={before} disabled={busy} headingRef={heading} sending={answerOnItsWay(state, check.id)}
      onAnswer={answer => session.change({ path: 'answers', body: { check: check.id, answer } })} onLeave={() => setAside(null)}
    />
  )
  return (
    <>
      {view.ticket !== null && (
        <AfterHandOver
          ticket={view.ticket} address={`${service.base}/case#${view.link}`} answerWithinHours={region?.answerWithinHours ?? null} sendsMail={region?.sendsMail ?? false}
          mayGoOn={view.step.kind === 'ask'} headingRef={heading} onLook={look}
          onLookAt={check => lineChange(check, view.lines.find(line => line.check.id === check.id)?.answer ?? null)}
          onWrite={mayChange && !cardFirst ? addWords : undefined} wordsSoFar={view.words.length} disabled={busy}
        photos={<PhotoBox view={view} service={service} photos={photos} onView={session.takeOver} mayRemove={false} />}
        />
      )}
      {!isStopped && <div class="sheet-top">
        <section class="words" aria-label={words.words.title}>
          <h3>{words.words.title}</h3>
          {view.words.map((said, place) => <blockquote key={place}>{said}</blockquote>)}
        </section>
        {!cardFirst && <SpecimenLabel view={view} districtName={districtName} onChange={mayChange ? () => setAside({ kind: 'plant' }) : undefined} />}
      </div>}
      {!cardFirst && <FilledLines
        lines={view.lines} placed={view.place.host !== null} changing={openLine?.check.id ?? null} disabled={busy}
        again={openLine === null && view.step.kind === 'ask' && view.step.again !== null ? view.step.check.id : null}
        openLine={(line, number) => checkLine(line.check, number, line.answer)}
        onChange={mayChange ? line => lineChange(line.check, line.answer) : undefined}
      />}
      {openLine !== null && !view.lines.some(line => line.check.id === openLine.check.id)
        && checkLine(openLine.check, view.lines.length + 1, null)}
      {aside?.kind === 'plant' && (
        <div class="step">
          <h3 class="step-title" tabIndex={-1} ref={heading}>{words.picker.title}</h3>
          <PlantPicker
            service={service} disabled={busy} startAt={null} leaveWords={words.picker.cancel} onLeave={() => setAside(null)}
            onPick={(host, node) => session.change({ path: 'place', body: { host, node } })}
          />
        </div>
      )}
      {isOutOfScope && aside === null && (
        <>
          <QuestionBox
            key={`${view.link} ${view.language}`} region={region} district={view.district} sending={busy} onOpen={session.open}
            again={{ words: view.words.join('\n'), headingRef: heading }}
          />
          <p class="step"><button type="button" class="quiet" onClick={() => setAside({ kind: 'plant' })}>{words.picker.aboutAPlant}</button></p>
        </>
      )}
      {(aside === null || aside.kind === 'specialist') && !(isOutOfScope && aside === null) && (
        <PanelStep
          view={view} session={session} state={state} service={service} photos={photos} sendsMail={region?.sendsMail ?? false} headingRef={heading} wholePage={wholePage}
          asksSpecialist={aside?.kind === 'specialist'} onSpecialist={() => setAside({ kind: 'specialist' })}
          onLeave={() => setAside(null)} onLookAt={check => lineChange(check, null)}
        />
      )}
      <TroubleNote state={state} session={session} />
      <footer class="sheet-foot" ref={style}>
        {mayChange && !isOutOfScope && view.step.kind !== 'red-flag' && <MoreWords disabled={busy} wordsSoFar={view.words.length} onAdd={addWords} />}
        <p class="row">
          {view.ticket === null && !cardFirst && aside?.kind !== 'specialist' && view.step.kind !== 'hand-over' && view.step.kind !== 'conclude' && (
            <button type="button" class="quiet" onClick={() => setAside({ kind: 'specialist' })}>{words.handOver.ask}</button>
          )}
          <button type="button" class="quiet" onClick={session.reset}>{words.more.restart}</button>
        </p>
      </footer>
    </>
  )
}
