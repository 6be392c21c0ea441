import type { CheckCard } from '../../../shared/index.js'
import { AdviceSheet } from '../case/advice-sheet.js'
import { FilledLines } from '../case/filled-lines.js'
import { FlagCards } from '../case/flag-cards.js'
import { LikelyList } from '../case/likely-list.js'
import { lineNumberOf } from '../case/line-number.js'
import { LONGEST_WORDS } from '../case/longest-words.js'
import { SampleNote } from '../case/sample-note.js'
import { SpecimenLabel } from '../case/specimen-label.js'
import { Told } from '../case/told.js'
import { UnsettledChecks } from '../case/unsettled-checks.js'
import { WatchNotices } from '../case/watch-notices.js'
import { usePlainWording } from '../wording/plain-language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { NOW, plainAddress, type CasePage } from './page.js'
import { PlainAfter, PlainLink } from './plain-after.js'
import { PlainCheck } from './plain-check.js'
import { PlainField, PlainForm } from './plain-form.js'
import { PlainHandOver } from './plain-hand-over.js'
import { ComplaintList, PlainPlace, PlantList } from './plain-place.js'

/** One case as a page without script: the cards, the words, the label, the lines, and the step it is at. */
export function PlainCase({ page }: { readonly page: CasePage }) {
  const words = useSheetWording()
  const plain = usePlainWording()
  const { view, region, aside, fault, typed } = page
  const cardFirst = view.step.kind === 'red-flag'
  const isStopped = cardFirst && view.cards.some(card => card.then === 'stop')
  const mayChange = view.ticket?.reply == null && !isStopped
  const here = plainAddress(view.link)
  const lookAddress = (check: CheckCard) => `${here}?look=${check.id}#${NOW}`
  const districtName = region.districts.find(row => row.district === view.district)?.name ?? view.district
  return (
    <>
      {fault !== null && <div class="trouble" role="alert"><p>{fault.field !== null && plain.fault} {fault.words}</p></div>}
      <FlagCards cards={view.cards} newCards={[]} />
      {view.ticket !== null && aside === null && <PlainAfter page={page} />}
      {!isStopped && (
        <div class="sheet-top">
          <section class="words" aria-label={words.words.title}>
            <h3>{words.words.title}</h3>
            {view.words.map((said, place) => <blockquote key={place}>{said}</blockquote>)}
          </section>
          {!cardFirst && <SpecimenLabel view={view} districtName={districtName} changeAddress={mayChange ? `${here}?plant=#${NOW}` : undefined} />}
        </div>
      )}
      {!cardFirst && <FilledLines lines={view.lines} placed={view.place.host !== null} changeAddress={mayChange ? line => lookAddress(line.check) : undefined} />}
      {aside === null ? <PlainStep page={page} lookAddress={mayChange ? lookAddress : undefined} /> : <AsidePart page={page} aside={aside} />}
      <footer class="sheet-foot">
        {mayChange && !cardFirst && view.ticket?.askedBack == null && (
          <details class="more" open={fault?.field === 'words'}>
            <summary>{words.more.title}</summary>
            <PlainForm link={view.link} change="words" revision={view.revision}>
              <PlainField name="words" label={words.more.label} rows={2} ruled longest={LONGEST_WORDS} value={typed['words'] ?? ''} fault={fault} />
              <button type="submit" class="second">{words.more.submit}</button>
            </PlainForm>
          </details>
        )}
        <p class="row">
          {view.ticket === null && !cardFirst && aside?.kind !== 'specialist' && view.step.kind !== 'hand-over' && view.step.kind !== 'conclude' && <a href={`${here}?specialist=#${NOW}`}>{words.handOver.ask}</a>}
          <a href={`/ask?language=${view.language}`}>{words.more.restart}</a>
        </p>
        {view.ticket === null && !cardFirst && <PlainLink address={page.address} />}
        <p class="hint">{plain.page}</p>
      </footer>
    </>
  )
}

function AsidePart({ page, aside }: { readonly page: CasePage, readonly aside: NonNullable<CasePage['aside']> }) {
  const words = useSheetWording()
  const { view, hosts } = page
  switch (aside.kind) {
    case 'line':
      return <PlainCheck link={view.link} revision={view.revision} check={aside.check} cards={view.cards} number={lineNumberOf(view, aside.check.id)} left={null} again={null} before={aside.before} mayLeave />
    case 'plants':
      return <div class="step" id={NOW}><h2 class="step-title">{words.picker.title}</h2><PlantList link={view.link} hosts={hosts} leave /></div>
    case 'complaints':
      return <ComplaintList link={view.link} revision={view.revision} host={aside.host} name={aside.name} complaints={aside.complaints} />
    case 'specialist':
      return <PlainHandOver page={page} mayLeave />
  }
}

/** The one thing the sheet is at. */
function PlainStep({ page, lookAddress }: { readonly page: CasePage, readonly lookAddress: ((check: CheckCard) => string) | undefined }) {
  const words = useSheetWording()
  const plain = usePlainWording()
  const { view } = page
  const { step } = view
  const answered = view.ticket?.reply != null
  switch (step.kind) {
    case 'red-flag':
      return view.cards.some(card => card.then === 'stop') ? null : (
        <div class="step">
          <p>{words.carryOn.lead}</p>
          <PlainForm link={view.link} change="carry-on" revision={view.revision}><p><button type="submit" class="second">{words.carryOn.submit}</button></p></PlainForm>
        </div>
      )
    case 'place':
      return answered ? null : <PlainPlace view={view} hosts={page.hosts} />
    case 'ask':
      return answered ? null : (
        <PlainCheck
          link={view.link} revision={view.revision} check={step.check} cards={view.cards} number={lineNumberOf(view, step.check.id)} left={step.left} again={step.again} isLastLook={step.isLastLook}
          before={step.again?.said ?? null} mayLeave={false}
        />
      )
    case 'conclude':
      return (
        <div id={view.ticket === null ? NOW : undefined}>
          <AdviceSheet conclusion={step} askedOn={view.askedOn} headingRef={null} lookAddress={answered ? undefined : lookAddress}>
            <p class="hint">{plain.print}</p>
            {view.ticket === null && <p class="row actions"><a class="second" href={`${plainAddress(view.link)}?specialist=#${NOW}`}>{words.advice.noFit}</a></p>}
          </AdviceSheet>
        </div>
      )
    case 'hand-over': {
      const because = (
        <>
          <WatchNotices watched={step.watched} />
          <LikelyList likely={step.likely} title={words.likely.title} reasons={false} />
          {lookAddress !== undefined && <UnsettledChecks checks={step.unsettled} lookAddress={lookAddress} />}
          <SampleNote sample={step.sample} />
        </>
      )
      if (answered) return null
      return view.ticket === null
        ? <PlainHandOver page={page} mayLeave={false}><p class="because"><Told text={step.because} /></p>{because}</PlainHandOver>
        : <div class="step">{because}</div>
    }
  }
}
