import type { Ref } from 'preact'
import type { FlagCard } from '../../../shared/index.js'
import { useSpoken } from '../wording/language.js'
import { sortProhibitions } from './prohibitions.js'
import { Told } from './told.js'

interface FlagCardsProps {
  readonly cards: readonly FlagCard[]
  /** Ids of cards that appeared just now: these speak up once; the others only stand there. */
  readonly newCards: readonly string[]
  /** Set while the cards are the one thing to attend to: the first card's title. */
  readonly headingRef?: Ref<HTMLHeadingElement> | null
}

/** The red-flag cards of a case, what to do first. They stay on top for the rest of the case. */
export function FlagCards({ cards, newCards, headingRef = null }: FlagCardsProps) {
  const worstFirst = [...cards].sort((one, other) => Number(other.level === 'emergency') - Number(one.level === 'emergency'))
  return <>{worstFirst.map((card, place) => <Card key={card.id} card={card} speaksUp={newCards.includes(card.id)} headingRef={place === 0 ? headingRef : null} />)}</>
}

function Card({ card, speaksUp, headingRef }: { readonly card: FlagCard, readonly speaksUp: boolean, readonly headingRef: Ref<HTMLHeadingElement> | null }) {
  const { language, wording: { flags: words } } = useSpoken()
  const heading = `flag-${card.id}`
  const { whole, bare } = sortProhibitions(card.doNot, language)
  const isEmergency = card.level === 'emergency'
  const calls = card.calls.length > 0 && (
    <ul class="flag-calls">
      {card.calls.map(call => (
        <li key={call.number}><PhoneLink name={call.name} number={call.number} verb={words.call} /></li>
      ))}
    </ul>
  )
  return (
    <section class={`flag ${card.level}`} aria-labelledby={heading} {...(speaksUp ? { role: 'alert' } : {})}>
      <h3 class="flag-title" id={heading} tabIndex={-1} ref={headingRef}>
        <span class="flag-level">{isEmergency ? words.emergency : words.caution}</span>
        <span class="flag-name"><Told text={card.title} /></span>
      </h3>
      {/* In an emergency nobody should have to scroll past the steps to a number. */}
      {isEmergency && calls}
      {card.doNow.length > 0 && (
        <ol class="flag-do" aria-label={words.doNow}>{card.doNow.map(line => <li key={line}><Told text={line} /></li>)}</ol>
      )}
      {!isEmergency && calls}
      {card.doNot.length > 0 && (
        <div class="flag-not">
          {whole.length > 0 && <ul>{whole.map(line => <li key={line}><Told text={line} /></li>)}</ul>}
          {bare.length > 0 && <><h4>{words.doNot}</h4><ul>{bare.map(line => <li key={line}><Told text={line} /></li>)}</ul></>}
        </div>
      )}
    </section>
  )
}

/** A number to call, as a link a phone can dial. */
export function PhoneLink({ name, number, verb }: { readonly name: string, readonly number: string, readonly verb: string }) {
  return (
    <a class="phone" href={`tel:${number.replace(/[^0-9+]/g, '')}`}>
      <span>{verb} <Told text={name} /></span> <b>{number}</b>
    </a>
  )
}
