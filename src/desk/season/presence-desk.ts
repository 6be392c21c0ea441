import { type PresenceTable, PresenceState, type SetPresence } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import { type PresenceChange, presenceOn } from '../../season/index.js'
import { announce, appendPresenceChange, type Db, lastPresenceChange, presenceChanges, type PresenceChangeRow } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { problemNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'

/** Everything ever said of watch problems, in the order in which it was said. */
export async function presenceWords(db: Db): Promise<PresenceChange[]> {
  return (await presenceChanges(db)).map(wordOf)
}

/** Every watch problem in every district, with how it stands today and all that was said of it. */
export async function showPresence({ db, knowledge, now }: Pick<Room, 'db' | 'knowledge' | 'now'>): Promise<PresenceTable> {
  const { guide } = knowledge()
  const rows = await presenceChanges(db)
  const today = now().toISOString().slice(0, 10)
  const watched = guide.problems.filter(({ watch }) => watch !== null).sort((a, b) => a.name.localeCompare(b.name, 'en'))
  return {
    rows: watched.flatMap(({ id, name }) => {
      const ofProblem = rows.filter(({ problem }) => problem === id)
      return [...guide.region.districts].map(([district, districtName]) => {
        const stands = presenceOn(ofProblem.map(wordOf), district, guide.region.beside.get(district) ?? [], today)
        return {
          problem: id, name, district, districtName, state: stands?.state ?? null, besideName: nameOf(guide, stands?.beside ?? null),
          history: ofProblem.filter((row) => row.district === district).reverse().map(({ state, holds_from: on, by, why, at }) => (
            { state: PresenceState.parse(state), on, by, why, at })),
        }
      })
    }),
  }
}

/**
 * Writes down how a watch problem stands in a district. What was said before stays; saying the same again, as by a double
 * click, changes nothing. Cases that are open already keep what the season made of them.
 */
export async function setPresence(room: Pick<Room, 'db' | 'knowledge' | 'now'>, body: SetPresence, who: Member): Promise<PresenceTable> {
  const { guide } = room.knowledge()
  const at = room.now().toISOString()
  const { problem, district, state, why, on = at.slice(0, 10) } = body
  const known = problemNamed(guide, problem)
  if (known === null) throw new DeskFault('UNKNOWN_PROBLEM', { words: { problem } })
  if (known.watch === null) throw new DeskFault('NOT_WATCHED', { words: { problem: known.name } })
  if (!guide.region.districts.has(district)) throw new DeskFault('UNKNOWN_DISTRICT', { words: { district } })
  if (on > at.slice(0, 10)) throw new DeskFault('DAY_TO_COME', { words: { day: on } })
  await room.db.transaction().execute(async (db) => {
    const last = await lastPresenceChange(db, problem, district)
    if (last !== undefined && last.state === state && last.why === why && last.holds_from === on && last.person_id === who.id) return
    await appendPresenceChange(db, { problem, district, state, holds_from: on, why, person_id: who.id, at })
    await announce(db, { ticket: null, what: 'presence', person: who.id })
  })
  return showPresence(room)
}

function wordOf({ problem, district, state, holds_from: on, by, why }: PresenceChangeRow): PresenceChange {
  return { problem, district, state: PresenceState.parse(state), on, by, why }
}

function nameOf(guide: Guide, district: string | null): string | null {
  return district === null ? null : guide.region.districts.get(district) ?? district
}
