import { useSheetWording } from '../wording/sheet-language.js'
import type { OfferedPlace } from './offered-places.js'
import { Told } from './told.js'

interface OfferLinesProps {
  readonly offer: OfferedPlace
  /** True where it is the only one: its whole tree then begins with a look. */
  readonly alone: boolean
  /** True where the asker comes from the card of an emergency. */
  readonly fromDanger: boolean
}

/** What stands on the button of an offer: the plant, its complaint, and the words that led there. */
export function OfferLines({ offer, alone, fromDanger }: OfferLinesProps) {
  const words = useSheetWording().place
  const ofWholeTree = fromDanger ? words.plantItself : alone ? words.tellNext : words.anything
  return (
    <>
      {offer.ofHarm !== true && <span class="offer-plant"><Told text={offer.hostName} shown={offer.shortName} /></span>}
      <span class="offer-trouble">{offer.phrase === null ? ofWholeTree : <Told text={offer.phrase} />}</span>
      {offer.heard.length > 0 && <span class="offer-heard">{words.heard} {offer.heard.map((said, n) => <q key={n}>{said}</q>)}</span>}
    </>
  )
}
