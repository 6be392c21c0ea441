import type { Ref } from 'preact'
import type { CaseView, CheckCard } from '../../../shared/index.js'
import { AdviceSheet } from '../case/advice-sheet.js'
import type { CaseSession, SessionState } from '../case/case-session.js'
import { answerOnItsWay } from '../case/answer-on-its-way.js'
import { CheckLine } from '../case/check-line.js'
import { HandOverForm } from '../case/hand-over-form.js'
import { LikelyList } from '../case/likely-list.js'
import { lineNumberOf } from '../case/line-number.js'
import { PhotoBox } from '../case/photo-box.js'
import { onTheWay, type PhotoUploads } from '../case/photo-uploads.js'
import { PlaceChoice } from '../case/place-choice.js'
import { SampleNote } from '../case/sample-note.js'
import { Told } from '../case/told.js'
import { UnsettledChecks } from '../case/unsettled-checks.js'
import { WatchNotices } from '../case/watch-notices.js'
import { useSheetWording } from '../wording/sheet-language.js'
import type { CaseService } from '../wire/case-service.js'

interface PanelStepProps {
  readonly view: CaseView
  readonly session: CaseSession
  readonly state: SessionState
  readonly service: CaseService
  /** Photos on their way. */
  readonly photos: PhotoUploads
  readonly sendsMail: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly wholePage: boolean
  /** The asker wants a specialist although the step is another. */
  readonly asksSpecialist: boolean
  readonly onSpecialist: () => void
  readonly onLeave: () => void
  readonly onLookAt: (check: CheckCard) => void
}

/** The one thing the sheet is at: confirm the plant, look at something, read the advice, or hand over. */
export function PanelStep(props: PanelStepProps) {
  const { view, session, state, service, photos, sendsMail, headingRef, wholePage, asksSpecialist, onSpecialist, onLeave, onLookAt } = props
  const words = useSheetWording()
  const busy = state.sending
  const sheetAddress = `${service.base}/case#${view.link}`
  const handedOver = view.ticket !== null
  const answered = view.ticket?.reply != null
  // Once the sheet is handed over, its heading is the waiting one above.
  const ownHeading = handedOver ? null : headingRef

  if (asksSpecialist && !handedOver) return handOver(null, onLeave)
  const { step } = view
  switch (step.kind) {
    case 'red-flag':
      return view.cards.some(card => card.then === 'stop')
        ? null
        : (
          <div class="step">
            <p>{words.carryOn.lead}</p>
            <p><button type="button" class="second" aria-disabled={busy} onClick={() => session.change({ path: 'carry-on', body: {} })}>{words.carryOn.submit}</button></p>
          </div>
        )
    case 'place':
      return answered ? null : (
        <PlaceChoice
          key={`${view.words.length} ${view.language}`} view={view} service={service} disabled={busy} headingRef={ownHeading}
          onSettle={(host, node) => session.change({ path: 'place', body: { host, node } })} onSpecialist={onSpecialist}
        />
      )
    case 'ask':
      return answered ? null : (
        <>
          <CheckLine
            key={`${step.check.id}/${step.again === null ? '' : 'again'}`} check={step.check} cards={view.cards} number={lineNumberOf(view, step.check.id)} left={step.left} again={step.again} isLastLook={step.isLastLook} disabled={busy} headingRef={ownHeading}
            sending={answerOnItsWay(state, step.check.id)}
            onAnswer={answer => session.change({ path: 'answers', body: { check: step.check.id, answer } })}
          />
          {step.left !== null && <EmptyLines count={step.left.least - 1} from={view.lines.length + (step.again === null ? 2 : 1)} />}
        </>
      )
    case 'conclude':
      return (
        <AdviceSheet conclusion={step} askedOn={view.askedOn} headingRef={ownHeading} onLookAt={answered ? undefined : onLookAt}>
          <p class="row actions">
            {wholePage
              ? <button type="button" class="second" onClick={() => window.print()}>{words.advice.print}</button>
              : <a class="second" href={sheetAddress} target="_blank" rel="noopener">{words.advice.openToPrint}</a>}
            {!handedOver && <button type="button" class="second" onClick={onSpecialist}>{words.advice.noFit}</button>}
          </p>
        </AdviceSheet>
      )
    case 'hand-over':
      return handedOver
        ? answered ? null : (
          <div class="step">
            <WatchNotices watched={step.watched} />
            <UnsettledChecks checks={step.unsettled} onLookAt={onLookAt} />
            <LikelyList likely={step.likely} title={words.likely.title} reasons={false} />
            <SampleNote sample={step.sample} />
          </div>
        )
        : handOver(step)
  }

  function handOver(step: Extract<CaseView['step'], { kind: 'hand-over' }> | null, leave?: () => void) {
    return (
      <HandOverForm
        link={view.link} disabled={busy} sending={busy} sendsMail={sendsMail} headingRef={ownHeading} onLeave={leave}
        onHandOver={body => session.change({ path: 'hand-over', body })}
        photosOnTheWay={onTheWay(photos.uploads())}
        photos={<PhotoBox view={view} service={service} photos={photos} onView={session.takeOver} mayRemove />}
      >
        {step !== null && (
          <>
            <p class="because"><Told text={step.because} /></p>
            <WatchNotices watched={step.watched} />
            <LikelyList likely={step.likely} title={words.likely.title} reasons={false} />
            <UnsettledChecks checks={step.unsettled} address={sheetAddress} onLookAt={onLookAt} />
            <SampleNote sample={step.sample} />
          </>
        )}
      </HandOverForm>
    )
  }
}

/** The ruled lines still to be filled in: a sheet shows how much of it is left. */
function EmptyLines({ count, from }: { readonly count: number, readonly from: number }) {
  if (count <= 0) return null
  return (
    <ol class="lines empty" aria-hidden="true">
      {Array.from({ length: Math.min(count, MOST_EMPTY_LINES) }, (_, place) => <li class="line" key={place}><span class="number">{from + place}</span></li>)}
    </ol>
  )
}

const MOST_EMPTY_LINES = 5
