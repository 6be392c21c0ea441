import type { Ref } from 'preact'
import { useState } from 'preact/hooks'
import type { CaseView } from '../../../shared/index.js'
import type { CaseService } from '../wire/case-service.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { hearingOf } from './hearing.js'
import { JobPicker } from './job-picker.js'
import { isAfterDanger, offeredPlaces } from './offered-places.js'
import { OfferLines } from './offer-lines.js'
import { UNKNOWN_PLANT } from './unknown-plant.js'
import { PlantPicker } from './plant-picker.js'

interface PlaceChoiceProps {
  readonly view: CaseView
  readonly service: CaseService
  readonly disabled: boolean
  readonly headingRef: Ref<HTMLHeadingElement>
  readonly onSettle: (host: string, node: string | null) => void
  /** The asker has no trouble to look into, but a question for a person. */
  readonly onSpecialist: () => void
}

/** What was heard, shown for a yes: the best three, or anything else by typing. */
export function PlaceChoice({ view, service, disabled, headingRef, onSettle, onSpecialist }: PlaceChoiceProps) {
  const words = useSheetWording().place
  const offers = offeredPlaces(view.place, view.cards)
  const hearing = hearingOf(view.place)
  const fromDanger = isAfterDanger(view.cards)
  const asksForPlant = offers.length === 0 || (!fromDanger && (hearing === 'no plant' || hearing === 'out of scope'))
  const isSure = !fromDanger && hearing === 'sure'
  const [picking, setPicking] = useState(asksForPlant)
  const [choosingJob, setChoosingJob] = useState(false)
  return (
    <div class="step">
      <h3 class="step-title" tabIndex={-1} ref={headingRef}>{choosingJob ? words.jobTitle : picking && asksForPlant ? words.titleNothing : fromDanger ? words.titleAfterDanger : isSure ? words.title : words.titleUnsure}</h3>
      {choosingJob && <JobPicker service={service} disabled={disabled} onPick={onSettle} onSpecialist={onSpecialist} onLeave={() => setChoosingJob(false)} />}
      {!picking && !choosingJob && (
        <>
          <p>{fromDanger ? words.leadAfterDanger : isSure ? words.lead : words.leadUnsure}</p>
          <ul class="offers">
            {offers.map((offer, place) => (
              <li key={`${offer.host}/${offer.node ?? ''}`}>
                <button type="button" class={place === 0 && isSure ? 'offer first' : 'offer'} aria-disabled={disabled} onClick={() => onSettle(offer.host, offer.node)}>
                  {place === 0 && isSure && offers.length > 1 && view.place.hosts.some(host => host.host === offer.host) && <span class="kicker">{words.guess}</span>}
                  <OfferLines offer={offer} alone={offers.length === 1} fromDanger={fromDanger} />
                </button>
              </li>
            ))}
          </ul>
          <p class="row">
            <button type="button" class="quiet" onClick={() => setPicking(true)}>{words.somethingElse}</button>
            {!offers.some(offer => offer.host === UNKNOWN_PLANT) && (
              <button type="button" class="quiet" onClick={() => onSettle(UNKNOWN_PLANT, null)}>{words.unknown}</button>
            )}
            {view.ticket === null && <button type="button" class="quiet" onClick={() => setChoosingJob(true)}>{words.notSick}</button>}
          </p>
        </>
      )}
      {picking && (
        <PlantPicker
          service={service} disabled={disabled} startAt={offers.length === 0 && view.cards.length === 0 ? view.place.hosts[0]?.host ?? null : null}
          onPick={onSettle}
          leaveWords={asksForPlant ? words.guesses : words.back} onLeave={offers.length === 0 ? undefined : () => setPicking(false)}
        />
      )}
    </div>
  )
}
