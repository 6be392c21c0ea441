import type { ComplaintRows, HostRows } from '../../../shared/index.js'
import { hearingOf } from '../case/hearing.js'
import { isAfterDanger, offeredPlaces } from '../case/offered-places.js'
import { OfferLines } from '../case/offer-lines.js'
import { Told, useLanguageOf } from '../case/told.js'
import { UNKNOWN_PLANT } from '../case/unknown-plant.js'
import { useWording } from '../wording/language.js'
import { usePlainWording } from '../wording/plain-language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { NOW, plainAddress, type CasePage } from './page.js'
import { PlainForm } from './plain-form.js'

/** What was heard, shown for a yes: the best three, or any other plant of the list. */
export function PlainPlace({ view, hosts }: Pick<CasePage, 'view' | 'hosts'>) {
  const { place: words, more } = useSheetWording()
  const { notAsked } = useWording()
  const hearing = hearingOf(view.place)
  const fromDanger = isAfterDanger(view.cards)
  const isSure = !fromDanger && hearing === 'sure'
  const offers = !fromDanger && (hearing === 'no plant' || hearing === 'out of scope') ? [] : offeredPlaces(view.place, view.cards)
  return (
    <div class="step" id={NOW}>
      <h2 class="step-title">{hearing === 'out of scope' && !fromDanger ? notAsked.title : offers.length === 0 ? words.titleNothing : fromDanger ? words.titleAfterDanger : isSure ? words.title : words.titleUnsure}</h2>
      {hearing === 'out of scope' && !fromDanger && <><p>{notAsked.lead}</p><p><a href={`/ask?language=${view.language}`}>{more.restart}</a></p></>}
      {offers.length > 0 && <p>{fromDanger ? words.leadAfterDanger : isSure ? words.lead : words.leadUnsure}</p>}
      {offers.length > 0 && (
        <ul class="offers">
          {offers.map((offer, place) => (
            <li key={`${offer.host}/${offer.node ?? ''}`}>
              <PlainForm link={view.link} change="place" revision={view.revision}>
                <input type="hidden" name="host" value={offer.host} />
                <input type="hidden" name="node" value={offer.node ?? ''} />
                <button type="submit" class={place === 0 && isSure ? 'offer first' : 'offer'}><OfferLines offer={offer} alone={offers.length === 1} fromDanger={fromDanger} /></button>
              </PlainForm>
            </li>
          ))}
        </ul>
      )}
      {offers.length > 0 && <h3>{words.somethingElse}</h3>}
      <PlantList link={view.link} hosts={hosts} />
      {!offers.some(offer => offer.host === UNKNOWN_PLANT) && (
        <PlainForm link={view.link} change="place" revision={view.revision}>
          <input type="hidden" name="host" value={UNKNOWN_PLANT} />
          <input type="hidden" name="node" value="" />
          <p><button type="submit" class="quiet">{words.unknown}</button></p>
        </PlainForm>
      )}
      {hearing !== 'out of scope' && view.ticket === null && (
        <details>
          <summary>{words.notSick}</summary>
          <h3>{words.jobTitle}</h3>
          <PlainForm link={view.link} change="place" revision={view.revision} class="picker">
            <input type="hidden" name="node" value="" />
            <ul class="picks">{hosts.filter(row => row.job === true).map(row => <li key={row.host}><button type="submit" name="host" value={row.host} class="answer"><Told text={row.name} /></button></li>)}</ul>
          </PlainForm>
          <p><a href={`${plainAddress(view.link)}?specialist=#${NOW}`}>{words.noneOfThese}</a></p>
        </details>
      )}
    </div>
  )
}

/** Every plant of the guide, to choose from. What is wrong with it comes next. */
export function PlantList({ link, hosts, leave = false }: { readonly link: string, readonly hosts: HostRows['hosts'], readonly leave?: boolean }) {
  const plain = usePlainWording()
  const { picker } = useSheetWording()
  const langOf = useLanguageOf()
  return (
    <form method="get" action={`${plainAddress(link)}#${NOW}`}>
      <div class="field short">
        <label for="plant">{plain.plant}</label>
        <select id="plant" name="plant" required><option value="">{plain.pick}</option>{hosts.map(row => <option key={row.host} value={row.host} lang={langOf(row.name)}>{row.name}</option>)}</select>
      </div>
      <p class="row"><button type="submit" class="second">{plain.goOn}</button>{leave && <a href={plainAddress(link)}>{picker.cancel}</a>}</p>
    </form>
  )
}

interface ComplaintListProps {
  readonly link: string
  readonly revision: number
  readonly host: string
  readonly name: string
  readonly complaints: ComplaintRows['complaints']
}

/** What can be wrong with the plant, in people's own words. */
export function ComplaintList({ link, revision, host, name, complaints }: ComplaintListProps) {
  const words = useSheetWording().picker
  return (
    <div class="step" id={NOW}>
      <h2 class="step-title">{words.complaint(name.toLowerCase())}</h2>
      <PlainForm link={link} change="place" revision={revision} class="picker">
        <input type="hidden" name="host" value={host} />
        <ul class="picks">
          {complaints.map(row => <li key={row.node}><button type="submit" name="node" value={row.node} class="answer"><Told text={row.phrases[0] ?? row.node} /></button></li>)}
          <li><button type="submit" name="node" value="" class="answer">{words.anything}</button></li>
        </ul>
      </PlainForm>
      <p class="row"><a href={`${plainAddress(link)}?plant=#${NOW}`}>{words.otherPlant}</a> <a href={plainAddress(link)}>{words.cancel}</a></p>
    </div>
  )
}
