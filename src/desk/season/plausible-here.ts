import type { Guide } from '../../guide/index.js'
import { isoWeekOf, plausibilities, type Plausible, RECENT_WEEKS, weekAfter } from '../../season/index.js'
import { countReports } from '../../store/index.js'
import type { Room } from '../room.js'
import { presenceWords } from './presence-desk.js'
import { weatherNow } from './weather-now.js'

/**
 * What the season makes likelier or less likely in a district on a day; nothing where no district is named. It is taken
 * once, when a case is opened, and kept with the case: a report that comes in the next hour must not turn an answer that
 * somebody has read, and the bench must see what the asker saw. Day and district are fixed by then, and what is kept is
 * of every plant, so that a change of plant later is weighed by the same day.
 */
export async function plausibleHere(room: Pick<Room, 'db' | 'now'>, guide: Guide, district: string | null, day: string): Promise<Plausible[]> {
  if (district === null) return []
  const until = isoWeekOf(day)
  const recent = await countReports(room.db, { from: weekAfter(until, 1 - RECENT_WEEKS), until, district })
  const presence = await presenceWords(room.db)
  const weather = await weatherNow(room, guide, district, day)
  return plausibilities(guide, { district, on: day, recent, presence, weather })
}
