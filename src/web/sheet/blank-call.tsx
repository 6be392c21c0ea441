import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { OpenCase, PracticeCall, RegionView, Suggestions } from '../../../shared/index.js'
import { FlagCards } from '../case/flag-cards.js'
import { LONGEST_WORDS } from '../case/longest-words.js'
import { offeredPlaces } from '../case/offered-places.js'
import { dayInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'

interface BlankCallProps {
  readonly service: StaffService
  readonly region: RegionView | null
  readonly draft: string
  readonly sending: boolean
  /** Set where the call is only practised: its caller's words are shown. */
  readonly practice: PracticeCall | null
  readonly onDraft: (words: string) => void
  readonly onOpen: (body: OpenCase) => void
}

/** A blank sheet: the caller's words as they speak, with what they would lead to shown while typing. */
export function BlankCall({ service, region, draft, sending, practice, onDraft, onOpen }: BlankCallProps) {
  const [words, setWords] = useState(draft)
  const [district, setDistrict] = useState('')
  const callersDistrict = practice === null ? null : region?.districts.find(row => row.district === practice.district)?.name ?? null
  const suggestions = useSuggestions(service, words)
  const field = useRef<HTMLTextAreaElement>(null)
  useLayoutEffect(() => field.current?.focus(), [])

  function open(): void {
    const said = words.trim()
    if (said === '' || sending) return
    onOpen({ words: said, ...(district === '' ? {} : { district }), ...(practice === null ? {} : { practice: practice.practice }) })
  }

  const offers = suggestions === null ? [] : offeredPlaces(suggestions, suggestions.cards)
  return (
    <form class="step" onSubmit={event => { event.preventDefault(); open() }}>
      {suggestions !== null && suggestions.cards.length > 0 && <FlagCards cards={suggestions.cards} newCards={suggestions.cards.map(card => card.id)} />}
      <h2 class="step-title" tabIndex={-1}>{practice === null ? 'A new call' : 'A practice call'}</h2>
      {practice !== null && (
        <div class="caller-says">
          <p><b>Practice: the caller says</b></p>
          <blockquote class="spoken">{practice.words}</blockquote>
          <p class="hint">A past case, on {dayInWords(practice.on)}{callersDistrict === null ? '' : `, from ${callersDistrict}`}. Write down what you hear, as on a real call. Nothing of it reaches a specialist.</p>
        </div>
      )}
      <div class="field">
        <label for="caller-words">The caller’s words</label>
        <textarea
          id="caller-words" class="ruled" ref={field} rows={3} maxLength={LONGEST_WORDS} value={words} aria-describedby="caller-words-hint" readOnly={sending}
          onInput={event => { setWords(event.currentTarget.value); onDraft(event.currentTarget.value) }}
          onKeyDown={event => {
            if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return
            event.preventDefault()
            open()
          }}
        />
        <p class="hint" id="caller-words-hint"><kbd>Enter</kbd> starts the sheet. <kbd>Shift</kbd> <kbd>Enter</kbd> makes a new line.</p>
      </div>
      {region !== null && region.districts.length > 0 && (
        <div class="field short">
          <label for="caller-district">District</label>
          <select id="caller-district" value={district} onChange={event => setDistrict(event.currentTarget.value)}>
            <option value="">not said</option>
            {region.districts.map(row => <option key={row.district} value={row.district}>{row.name}</option>)}
          </select>
        </div>
      )}
      <section class="heard" aria-label="What these words would lead to" aria-live="polite">
        {offers.length > 0 && <h3>So far this sounds like</h3>}
        <ol>
          {offers.map(offer => (
            <li key={`${offer.host}/${offer.node ?? ''}`}>
              {offer.ofHarm !== true && <b>{offer.hostName} </b>}<span class="written">{offer.phrase ?? 'complaint not yet clear'}</span>
              {offer.heard.length > 0 && <span class="origin">heard: {offer.heard.join(', ')}</span>}
            </li>
          ))}
        </ol>
      </section>
      <p><button type="submit" class="main" disabled={sending}>{sending ? 'Starting …' : 'Start the sheet'}<kbd>Enter</kbd></button></p>
    </form>
  )
}

/** What the words so far would lead to. A pause in typing asks; a newer question calls off the one before. */
function useSuggestions(service: StaffService, words: string): Suggestions | null {
  const [suggestions, setSuggestions] = useState<Suggestions | null>(null)
  useEffect(() => {
    const said = words.trim()
    if (said.length < LEAST_LETTERS) {
      setSuggestions(null)
      return
    }
    const stop = new AbortController()
    const timer = setTimeout(() => {
      void service.suggest(said, stop.signal).then(reply => { if (reply.ok && !stop.signal.aborted) setSuggestions(reply.value) })
    }, PAUSE_MS)
    return () => { clearTimeout(timer); stop.abort() }
  }, [words, service])
  return suggestions
}

const LEAST_LETTERS = 3
const PAUSE_MS = 180
