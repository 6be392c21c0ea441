import type { FlagCard } from '../../../shared/index.js'
import { Told } from './told.js'

/** How to look without coming to harm, where a card of the case says so: each once, beside the check that is asked. */
export function LookSafely({ cards }: { readonly cards: readonly FlagCard[] }) {
  const notes = [...new Set(cards.flatMap(({ level, looking }) => (level === 'emergency' && looking !== undefined ? [looking] : [])))]
  return <>{notes.map(note => <p class="look-safely" key={note}><Told text={note} /></p>)}</>
}
