import type { CaseView } from '../../../shared/index.js'

/** For a ticket whose plant was never settled: what its words may mean, with the words that led there. */
export function PlaceGuesses({ view }: { readonly view: CaseView }) {
  if (view.place.host !== null) return null
  const { entries, hosts } = view.place
  const alone = hosts.filter(host => !entries.some(entry => entry.host === host.host))
  return (
    <section class="step guesses">
      <h3>The plant was not settled. Their words may mean</h3>
      {entries.length === 0 && alone.length === 0 ? <p>Nothing of the guide was heard in them.</p> : (
        <ul>
          {entries.slice(0, MOST_GUESSES).map(entry => (
            <li key={`${entry.host}/${entry.node}`}>
              <span class="likely-name">{entry.hostName}</span>: <span class="written">{entry.phrase}</span> <Heard words={entry.words} />
            </li>
          ))}
          {alone.slice(0, MOST_GUESSES - Math.min(MOST_GUESSES, entries.length)).map(host => (
            <li key={host.host}><span class="likely-name">{host.name}</span> <Heard words={host.words} /></li>
          ))}
        </ul>
      )}
    </section>
  )
}

function Heard({ words }: { readonly words: readonly { readonly text: string }[] }) {
  const telling = words.filter(word => word.text.length >= SHORTEST_QUOTED)
  if (telling.length === 0) return null
  return <span class="origin">heard in {telling.map((word, place) => <span key={place}>{place > 0 && ', '}<q>{word.text}</q></span>)}</span>
}

const MOST_GUESSES = 4
/** Shorter words ('is', 'on') say nothing when quoted alone. */
const SHORTEST_QUOTED = 3
