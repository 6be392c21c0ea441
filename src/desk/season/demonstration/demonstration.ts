import { seededRandom } from '../../../engine/index.js'
import type { Guide } from '../../../guide/index.js'
import { addDays, isoWeekOf, weekAfter, weeksBetween } from '../../../season/index.js'
import {
  appendPresenceChange, beginWeatherRead, type Db, endWeatherRead, hasInventedSeason, insertWeatherStation, keepInventedCounts,
  peopleNow, removeInventedSeason, weatherStations,
} from '../../../store/index.js'
import { memberFromRow } from '../../people/member.js'
import type { Room } from '../../room.js'
import { keepBatch } from '../keep-weather.js'
import { approveNote, showNote } from '../note-desk.js'
import { inventReports, type Outbreak } from './invented-reports.js'
import { inventWeather } from './invented-weather.js'

type DemonstrationRoom = Pick<Room, 'db' | 'now'> & { knowledge(): { readonly guide: Guide } }

/** Two seasons, this one among them. */
const WEEKS = 104
const DAYS = 730
const NOTES = 4
const ROWS_AT_ONCE = 500
/** Said wherever one of these words is shown. */
const INVENTED = 'Invented for the demonstration'

/** What was added. */
export interface Demonstration {
  readonly reports: number
  readonly stations: number
  readonly presence: number
}

/**
 * Makes up two seasons for the demonstration region: reports, weather and words on watch problems, each marked as invented
 * and all of it from one seed, so that the same day brings the same season.
 * @throws Error when the region is a real one, when a season was made up already, or when there is no specialist to sign the words
 */
export async function addDemonstration({ db, knowledge, now }: DemonstrationRoom, seed = 20260301): Promise<Demonstration> {
  const { guide } = knowledge()
  if (!guide.region.demonstration) throw new Error('trees/region.yaml describes a real region, and nothing invented belongs in its records. This works with `demonstration: true` only.')
  if (await hasInventedSeason(db)) throw new Error('An invented season is there already. Take it away first: frondline season demo remove')
  const signer = (await peopleNow(db)).find(({ role }) => role !== 'volunteer')
  if (signer === undefined) throw new Error('There is no specialist in whose name words on watch problems could stand. Add one first: frondline people add NAME specialist')
  const today = now().toISOString().slice(0, 10)
  const random = seededRandom(seed)
  const districts = [...guide.region.districts.keys()]
  const until = isoWeekOf(today)
  const outbreaks = outbreaksFor(guide, districts, today)
  const reports = inventReports(guide, random, districts, weekAfter(until, 1 - WEEKS), until, outbreaks)
  const added = await db.transaction().execute(async (transaction) => {
    await keepInventedCounts(transaction, reports.map(({ district, ...count }) => ({ ...count, district: district ?? '' })))
    const words = presenceWordsFor(guide, districts, today)
    for (const word of words) {
      await appendPresenceChange(transaction, { ...word, person_id: signer.id, at: `${word.holds_from}T09:00:00.000Z`, invented: 1 })
    }
    for (const [place, district] of districts.entries()) {
      const weather = inventWeather(seededRandom(seed + place + 1), addDays(today, -DAYS), addDays(today, -1), place === districts.length - 1 ? 2.1 : place * 0.3)
      await keepStation(transaction, { district, title: `${guide.region.districts.get(district) ?? district} school garden (invented)`, place, weather, at: now().toISOString() })
    }
    return { reports: reports.reduce((sum, { cases }) => sum + cases, 0), stations: districts.length, presence: words.length }
  })
  // The notes of the weeks that are over, as the service drafts them. A week that people wrote of keeps what they wrote.
  for (let back = NOTES; back >= 1; back--) {
    const week = weekAfter(until, -back)
    const { draft, history } = await showNote({ db, knowledge, now }, week)
    if (history.length === 0) await approveNote({ db, knowledge, now }, { week, note: draft }, memberFromRow(signer))
  }
  return added
}

/** Takes the made-up seasons away. Returns false when there were none. */
export async function removeDemonstration({ db }: Pick<DemonstrationRoom, 'db'>): Promise<boolean> {
  if (!await hasInventedSeason(db)) return false
  await db.transaction().execute((transaction) => removeInventedSeason(transaction))
  return true
}

interface InventedStation {
  readonly district: string
  readonly title: string
  readonly place: number
  readonly weather: ReturnType<typeof inventWeather>
  readonly at: string
}

async function keepStation(db: Db, { district, title, place, weather: { days, hours }, at }: InventedStation): Promise<void> {
  const name = `invented-${district}`
  await insertWeatherStation(db, { name, title, district, latitude: 52 + place * 0.1, longitude: -1 - place * 0.1, clock_minutes: 0, invented: 1 })
  const station = (await weatherStations(db)).find((row) => row.name === name)
  if (station === undefined) throw new Error(`The station "${name}" was not kept.`)
  const read = await beginWeatherRead(db, station.id, INVENTED, at)
  for (let from = 0; from < Math.max(days.length, hours.length); from += ROWS_AT_ONCE) {
    await keepBatch(db, station.id, read, { kind: 'daily', records: days.slice(from, from + ROWS_AT_ONCE) })
    await keepBatch(db, station.id, read, { kind: 'hourly', records: hours.slice(from, from + ROWS_AT_ONCE) })
  }
  await endWeatherRead(db, read, { outcome: 'kept', kept: days.length + hours.length, faults: 0, why: null, ended_at: at })
}

/** One problem that rises in the last weeks, and one watch problem that came to two districts last summer. */
function outbreaksFor(guide: Guide, districts: readonly string[], today: string): Outbreak[] {
  const until = isoWeekOf(today)
  const month = Number(today.slice(5, 7))
  const inSeason = guide.problems.find(({ watch, months, kind }) => watch === null && kind !== 'harmless' && months.includes(month))
  const watched = guide.problems.find(({ watch }) => watch !== null)
  const year = Number(today.slice(0, 4)) - (today.slice(5) < '08-01' ? 1 : 0)
  const summer = weeksBetween(isoWeekOf(`${year}-06-20`), isoWeekOf(`${year}-07-25`))
  return [
    ...(inSeason === undefined ? [] : districts.slice(0, 2).map((district) => (
      { problem: inSeason.id, district, weeks: weeksBetween(weekAfter(until, -2), until), factor: 4 }))),
    ...(watched === undefined ? [] : districts.slice(-2).map((district) => ({ problem: watched.id, district, weeks: summer, factor: 0.5 }))),
  ]
}

function presenceWordsFor(guide: Guide, districts: readonly string[], today: string) {
  const watched = guide.problems.filter(({ watch }) => watch !== null).slice(0, 4)
  const word = (problem: string, district: string, state: string, holds_from: string, why: string) => (
    { problem, district, state, holds_from, why: `${INVENTED}: ${why}` })
  return watched.flatMap(({ id }, place) => {
    const first = districts.map((district) => word(id, district, 'not found', addDays(today, -600 + place), 'looked for along the roads in spring'))
    const [here, beside] = districts.slice(place % 2)
    if (here === undefined || beside === undefined || place > 1) return first
    return [...first,
      word(id, here, 'present', addDays(today, -150 - place * 60), 'found in two gardens, confirmed by the laboratory'),
      word(id, beside, 'found nearby', addDays(today, -140 - place * 60), 'traps put up after the find next door'),
    ]
  })
}
