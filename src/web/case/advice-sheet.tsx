import type { ComponentChildren, Ref } from 'preact'
import type { AdviceCard, CaseStep, CheckCard } from '../../../shared/index.js'
import { dayInWords, inOneLine, monthInWords } from '../wording/day.js'
import { useSpoken, useWording } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { PhoneLink } from './flag-cards.js'
import { LikelyList, Reasons } from './likely-list.js'
import { MovedNote } from './moved-note.js'
import { monthRuns, seasonsNamed } from './time-of-year.js'
import { Told } from './told.js'
import { TurnList } from './turn-list.js'
import { WatchNotices } from './watch-notices.js'

type Conclusion = Extract<CaseStep, { kind: 'conclude' }>

interface AdviceSheetProps {
  readonly conclusion: Conclusion
  /** ISO date of the question. */
  readonly askedOn: string
  readonly headingRef: Ref<HTMLHeadingElement>
  /** True where number keys open the checks that would change the answer. */
  readonly keyed?: boolean
  /** Opens a check that would change the answer; left out when the sheet is closed. */
  readonly onLookAt?: ((check: CheckCard) => void) | undefined
  /** Where such a check is opened, on a page without script. */
  readonly lookAddress?: ((check: CheckCard) => string) | undefined
  /** What may be done with it: print, ask a specialist. */
  readonly children?: ComponentChildren
}

/** A conclusion, bottom line first: how sure, what to do, what not to bother with, why, and where it comes from. */
export function AdviceSheet({ conclusion, askedOn, headingRef, keyed = false, onLookAt, lookAddress, children }: AdviceSheetProps) {
  const { call } = useWording().flags
  const wording = useSheetWording()
  const words = wording.advice
  const { card, why, others, turns, watched } = conclusion
  // A job is what the asker chose: there is nothing to be sure of, and nothing that it could be instead.
  const isJob = card.kind === 'garden job'
  return (
    <div class="step advice">
      <p class="kicker">{isJob ? words.jobTitle : words.title}</p>
      <h3 class="step-title" tabIndex={-1} ref={headingRef}><Told text={card.name} /></h3>
      <p class="bottom-line"><Told text={card.bottomLine} /></p>
      {!isJob && (
        <p class="sureness">
          <span>{words.sure}:</span> <b>{card.sureness}</b>, {words.share(card.probability)}
          <svg class="bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
            <rect class="bar-whole" width="100" height="6" /><rect class="bar-part" width={card.probability * 100} height="6" />
          </svg>
        </p>
      )}
      {card.escalate !== null && (
        <div class="report">
          <h4>{words.report}</h4>
          <p><Told text={card.escalate} /></p>
          {card.escalateCall !== null && <p><PhoneLink name={card.escalateCall.name} number={card.escalateCall.number} verb={call} /></p>}
        </div>
      )}
      <WatchNotices watched={watched} />
      <Part title={words.cautions} lines={card.cautions} kind="cautions" />
      <Part title={words.doNow} lines={card.doNow} />
      <Part title={words.notWorth} lines={card.notWorthDoing} />
      <Part title={words.nextYear} lines={card.nextYear} />
      <TimeOfYear card={card} askedOn={askedOn} />
      {!isJob && <div class="part"><h4>{card.spraysNothing ? words.noSpray : words.spray}</h4><p><Told text={card.spray} /></p></div>}
      <div class="part"><h4>{isJob ? words.jobWhy : words.why}</h4>
        <div>
          <p><Told text={card.what} />{card.agent !== null && <> {words.cause}: <i>{card.agent}</i>.</>}</p>
          {!isJob && <Reasons line={why} />}
          {!isJob && <MovedNote moved={why.moved} />}
          {!isJob && why.against.length === 0 && why.for.length > 0 && <p class="hint">{words.nothingAgainst}</p>}
        </div>
      </div>
      {!isJob && <TurnList turns={turns} keyed={keyed} onLookAt={onLookAt} lookAddress={lookAddress} />}
      {card.lookAlikes.length > 0 && (
        <div class="part"><h4>{isJob ? words.jobBeside : words.lookAlikes}</h4><p>{card.lookAlikes.map((other, place) => <>{place > 0 && ', '}<Told text={other.name} /></>)}</p></div>
      )}
      {!isJob && others.length > 0 && <LikelyList likely={others} title={words.others} reasons={false} />}
      <Sources card={card} />
      {children}
    </div>
  )
}

function Part({ title, lines, kind = '' }: { readonly title: string, readonly lines: readonly string[], readonly kind?: string }) {
  if (lines.length === 0) return null
  return (
    <div class={`part ${kind}`}>
      <h4>{title}</h4>
      <ul>{lines.map(line => <li key={line}><Told text={line} /></li>)}</ul>
    </div>
  )
}

/** Which months the steps mean, and whether this is one of them. */
function TimeOfYear({ card, askedOn }: { readonly card: AdviceCard, readonly askedOn: string }) {
  const words = useSheetWording().advice
  const { language } = useSpoken()
  const runs = monthRuns(card.months)
  const named = seasonsNamed(card)
  const month = Number(askedOn.slice(5, 7))
  if (runs.length === 0 && named.length === 0) return null
  const spans = (months: readonly number[]) => inOneLine(monthRuns(months).map(([first, last]) => words.months(monthInWords(first, language), monthInWords(last, language))), language)
  return (
    <div class="part"><h4>{words.when}</h4>
      <ul>
        {runs.length > 0 && <li>{words.mostlySeen(spans(card.months))}</li>}
        {named.map(({ season, months }) => <li key={season}>{words.season(season, spans(months))}</li>)}
        {named.length > 0 && <li>{words.askedIn(monthInWords(month, language))}</li>}
      </ul>
    </div>
  )
}

function Sources({ card }: { readonly card: AdviceCard }) {
  const { language } = useSpoken()
  const words = useSheetWording().advice
  return (
    <div class="part sources">
      <h4>{words.sources}</h4>
      <div>
        {card.sources.length === 0
          ? <p>{words.commonPractice}</p>
          : <ul>{card.sources.map(source => (
            <li key={source.title}><cite>{source.title}</cite>{source.by !== '' && `. ${source.by}`}{source.year !== null && `, ${source.year}`}</li>
          ))}</ul>}
        <p class="hint">{words.reviewed(dayInWords(card.reviewedOn, language))}</p>
      </div>
    </div>
  )
}
