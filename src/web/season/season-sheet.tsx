import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { DistrictWeather, NoteView, PlausibleTable, PresenceTable, RegionView, SeasonView, WatchNotices } from '../../../shared/index.js'
import { KeyBoard, useKeys, type KeyAction } from '../sheet/keys.js'
import type { Reply } from '../wire/reply.js'
import type { SeasonService } from '../wire/season-service.js'
import { weekInWords } from '../wording/day.js'
import { NotePart } from './note-part.js'
import { Notices } from './notices.js'
import { PlausibleList } from './plausible-list.js'
import { PresenceGrid } from './presence-grid.js'
import { WeatherPart } from './weather-part.js'
import { WeekPlate } from './week-plate.js'

interface SeasonSheetProps {
  readonly service: SeasonService
  readonly region: RegionView
  /** False for those who may only look. */
  readonly mayWrite: boolean
}

/** So many drawings at first: what was reported most of late. */
const FIRST_SHOWN = 9

/** What this season is doing: reports by week, watch problems by district, weather, and what all of it makes likelier. */
export function SeasonSheet({ service, region, mayWrite }: SeasonSheetProps) {
  const [district, setDistrict] = useState<string | null>(null)
  const [until, setUntil] = useState<string | null>(null)
  const [all, setAll] = useState(false)
  const [round, setRound] = useState(0)
  const season = useReply(() => service.season(district, until), [district, until, round])
  const [presence, setPresence] = useFetched<PresenceTable>(() => service.presence(), [round])
  const [notices, setNotices] = useFetched<WatchNotices>(() => service.watchNotices(), [round])
  const title = useRef<HTMLHeadingElement>(null)
  useLayoutEffect(() => title.current?.focus({ preventScroll: true }), [])
  const [note, setNote] = useFetched<NoteView>(() => service.note(until), [until, round])
  const [noteFault, setNoteFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)
  const [fault, setFault] = useState<string | null>(null)

  const places: readonly (string | null)[] = [null, ...region.districts.map(row => row.district)]
  const nameOf = (place: string | null) => region.districts.find(row => row.district === place)?.name ?? 'All districts'
  const view = season.value
  const toPlace = (by: number) => setDistrict(places[(places.indexOf(district) + by + places.length) % places.length] ?? null)
  const actions: KeyAction[] = [
    { key: 'D', words: 'Next district', run: () => toPlace(1) },
    { key: 'E', words: 'A week earlier', run: () => { if (view !== null) setUntil(view.weekBefore) } },
    ...(view?.weekAfter == null ? [] : [{ key: 'L', words: 'A week later', run: () => setUntil(view.weekAfter) }]),
  ]
  const keys = useKeys(actions, () => title.current?.focus({ preventScroll: true }))

  async function write<Value>(send: () => Promise<Reply<Value>>, take: (value: Value) => void, tell: (fault: string | null) => void): Promise<boolean> {
    if (sending) return false
    setSending(true)
    const reply = await send()
    setSending(false)
    tell(reply.ok ? null : reply.trouble.kind === 'refused' ? reply.trouble.detail : 'We could not reach the service. Nothing was written down; try again.')
    if (reply.ok) take(reply.value)
    return reply.ok
  }

  const shown = view?.problems.slice(0, all ? undefined : FIRST_SHOWN) ?? []
  const lastMonday = view?.monday
  const rises = view?.problems.filter(({ rise }) => rise.unusual) ?? []

  return (
    <div class="bench season" data-keys>
      <div class="season-parts">
        {notices !== null && <Notices notices={notices.notices} mayWrite={mayWrite} onAside={async notice => { const reply = await service.putNoticeAside(notice); if (reply.ok) setNotices(reply.value) }} />}
        <section class="sheet ledger" aria-labelledby="season-title">
          <header class="ledger-head">
            <h2 id="season-title" tabIndex={-1} ref={title}>Reports by week <span class="hint">{nameOf(district)}</span></h2>
            <div class="row">
              <label class="row">District <select value={district ?? ''} onChange={event => setDistrict(event.currentTarget.value === '' ? null : event.currentTarget.value)}>
                {places.map(place => <option key={place ?? ''} value={place ?? ''}>{nameOf(place)}</option>)}
              </select><kbd>D</kbd></label>
              <button type="button" class="second" onClick={() => { if (view !== null) setUntil(view.weekBefore) }}>Week earlier<kbd>E</kbd></button>
              {view?.weekAfter != null && <button type="button" class="second" onClick={() => setUntil(view.weekAfter)}>Week later<kbd>L</kbd></button>}
            </div>
          </header>
          <div class="step">
            {season.lost && <p class="fault" role="status">We cannot reach the service just now. <button type="button" onClick={() => setRound(round + 1)}>Try again</button></p>}
            {view === null && !season.lost && <p>Fetching the season …</p>}
            {view !== null && (
              <>
                <p role="status">The year up to {lastMonday === undefined ? view.until : weekInWords(lastMonday)}. {view.recordsFrom === null ? '' : rises.length === 0 ? 'No unusual rise this week.' : `Unusual rise: ${rises.map(({ name }) => name).join(', ')}.`}</p>
                {view.invented && <p class="invented">These seasons are invented, for the demonstration. <code>npx frondline season demo remove</code> takes them away.</p>}
                {view.problems.length === 0
                  ? <Empty view={view} demonstration={region.demonstration} />
                  : <p class="hint">Bars: reports; settled ones count one, concluded ones by how likely they are, and whoever asks twice once. Band: where the same weeks of earlier years lie, 95 in 100 (Garwood 1936). ▲ marks an unusual rise. {[...new Set(shown.map(({ rise }) => rise.note))].join(' ')}</p>}
                <div class="plates">{shown.map(one => <WeekPlate key={one.problem} season={one} place={district ?? 'all'} />)}</div>
                {all && view.more > 0 && <p class="hint">{view.more} more problems had fewer reports.</p>}
                {!all && view.problems.length > shown.length && <p><button type="button" class="second" onClick={() => setAll(true)}>Show all {view.problems.length} problems</button></p>}
              </>
            )}
          </div>
        </section>
        <section class="sheet" aria-labelledby="presence-title">
          <div class="step">
            <h2 id="presence-title">Watch problems by district</h2>
            {presence === null ? <p>Fetching …</p> : presence.rows.length === 0 ? <p>The guide names no watch problem.</p>
              : <PresenceGrid table={presence} mayWrite={mayWrite} sending={sending} fault={fault} onSet={body => write(() => service.setPresence(body), setPresence, setFault)} />}
          </div>
        </section>
        <section class="sheet" aria-labelledby="note-title">
          <div class="step">
            <h2 id="note-title">What we are seeing: the note for everyone</h2>
            {note === null ? <p>Fetching …</p> : (
              <NotePart
                view={note} mayWrite={mayWrite} sending={sending} fault={noteFault}
                onApprove={text => void write(() => service.approveNote({ week: note.week, note: text }), setNote, setNoteFault)}
                onTakeBack={() => void write(() => service.takeBackNote(note.week), setNote, setNoteFault)}
              />
            )}
          </div>
        </section>
        {district === null
          ? <section class="sheet" aria-label="Weather"><div class="step"><h2>Weather</h2><p>Choose a district to see its weather, and what is likelier there now.</p></div></section>
          : <DistrictPart key={district} service={service} district={district} round={round} />}
      </div>
      <KeyBoard actions={actions} keys={keys} />
    </div>
  )
}

function Empty({ view, demonstration }: { readonly view: SeasonView, readonly demonstration: boolean }) {
  if (view.recordsFrom !== null) return <p>No reports here in this year.</p>
  return (
    <>
      <p>No reports yet. They come by themselves: every case that the guide concludes or a specialist settles counts.</p>
      {demonstration && <p>To see this page alive, whoever runs the service can add two invented seasons, and take them away again: <code>npx frondline season demo --help</code>.</p>}
    </>
  )
}

function DistrictPart({ service, district, round }: { readonly service: SeasonService, readonly district: string, readonly round: number }) {
  const [weather] = useFetched<DistrictWeather>(() => service.weather(district), [district, round])
  const [plausible] = useFetched<PlausibleTable>(() => service.plausible(district), [district, round])
  return (
    <>
      <section class="sheet" aria-labelledby="weather-title">
        <div class="step">
          <h2 id="weather-title">Weather{weather === null ? '' : ` in ${weather.districtName}`}</h2>
          {weather === null ? <p>Fetching the weather …</p> : <WeatherPart weather={weather} />}
        </div>
      </section>
      <section class="sheet" aria-labelledby="plausible-title">
        <div class="step">
          <h2 id="plausible-title">Likelier or less likely now{plausible === null ? '' : ` in ${plausible.districtName}`}</h2>
          {plausible === null ? <p>Fetching …</p> : <PlausibleList table={plausible} />}
        </div>
      </section>
    </>
  )
}

function useReply<Value>(ask: () => Promise<Reply<Value>>, of: readonly unknown[]): { readonly value: Value | null, readonly lost: boolean } {
  const [state, setState] = useState<{ readonly value: Value | null, readonly lost: boolean }>({ value: null, lost: false })
  useEffect(() => {
    let here = true
    void ask().then(reply => { if (here) setState(before => reply.ok ? { value: reply.value, lost: false } : { ...before, lost: true }) })
    return () => { here = false }
  }, of)
  return state
}

/** What was fetched, and a way to put something newer in its place. What cannot be fetched stays as it was. */
function useFetched<Value>(ask: () => Promise<Reply<Value>>, of: readonly unknown[]): [Value | null, (value: Value) => void] {
  const [value, setValue] = useState<Value | null>(null)
  const fetched = useReply(ask, of)
  useEffect(() => { if (fetched.value !== null) setValue(fetched.value) }, [fetched.value])
  return [value, setValue]
}
