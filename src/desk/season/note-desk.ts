import { type ApproveNote, NoteText, type NoteView, SeeingNote, type SeeingList, type TakeBackNote } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import {
  draftNote, earlierYears, type IsoWeek, isoWeekOf, mondayOfWeek, publicCounts, risePlan, sameWeekBefore, sameWeeksBefore, unusualRise, weekAfter,
  type WeekOfProblem,
} from '../../season/index.js'
import {
  appendWeeklyNote, countReports, type CountRow, type Db, firstCountedWeek, hasInventedSeason, publishedNotes, weeklyNotesOf,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { problemNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'

type NoteRoom = Pick<Room, 'db' | 'now'> & { knowledge(): { readonly guide: Guide } }

/** Notes that everyone may read back: a season's weeks. */
const WEEKS_PUBLIC = 26
/** Enough for every baseline of the outbreak method and five earlier years. */
const YEARS_BACK = 5

/** The note of one week: what the service would write, what is published, and who did what. */
export async function showNote({ db, knowledge, now }: NoteRoom, wanted?: string): Promise<NoteView> {
  const { guide } = knowledge()
  const week = weekAfter(wanted ?? isoWeekOf(today(now)), 0)
  const rows = await weeklyNotesOf(db, week)
  const standing = rows[0]?.note ?? null
  const draft = NoteText.parse(draftNote(await weekOf(guide, db, week), guide.region.districts))
  const published = standing === null ? null : SeeingNote.parse(JSON.parse(standing))
  const named = [...draft.problems, ...published?.problems ?? []].map(({ problem }) => problem)
  return {
    week, monday: mondayOfWeek(week), leastCount: guide.region.leastPublicCount, draft, published,
    names: Object.fromEntries(named.map((problem) => [problem, problemNamed(guide, problem)?.name ?? problem])),
    history: rows.map(({ what, by, at }) => ({ what: what === 'approved' ? 'approved' : 'taken back', by, at })),
  }
}

/**
 * Lets everyone read a note. The counts beside its texts are those of this moment, with small ones left out; they stay as
 * they are until it is approved anew.
 */
export async function approveNote(room: NoteRoom, { week: wanted, note }: ApproveNote, who: Member): Promise<NoteView> {
  const { guide } = room.knowledge()
  const week = weekAfter(wanted, 0)
  const at = room.now().toISOString()
  if (week > isoWeekOf(at.slice(0, 10))) throw new DeskFault('DAY_TO_COME', { words: { day: mondayOfWeek(week) } })
  const counted = new Map((await weekOf(guide, room.db, week)).map((one) => [one.problem, one]))
  await room.db.transaction().execute(async (db) => {
    const before = await weeklyNotesOf(db, week)
    const first = before.at(-1)
    const seen: SeeingNote = {
      week, monday: mondayOfWeek(week), title: titleOf(week), lead: note.lead,
      published: first?.at ?? at, updated: at, invented: await hasInventedSeason(db),
      problems: note.problems.map(({ problem, text }) => {
        const known = problemNamed(guide, problem)
        if (known === null) throw new DeskFault('UNKNOWN_PROBLEM', { words: { problem } })
        const counts = counted.get(problem)?.counts
        return {
          problem, name: known.name, text, total: counts?.total ?? null,
          places: (counts?.places ?? []).map(({ place, count }) => ({ district: place, name: guide.region.districts.get(place) ?? 'places not named', count })),
        }
      }),
    }
    await appendWeeklyNote(db, { week, what: 'approved', note: JSON.stringify(seen), person_id: who.id, at, invented: seen.invented ? 1 : 0 })
  })
  return showNote(room, week)
}

/** Takes a note back: nobody else can read it from now on. Done again it changes nothing. */
export async function takeBackNote(room: NoteRoom, { week: wanted }: TakeBackNote, who: Member): Promise<NoteView> {
  const week = weekAfter(wanted, 0)
  await room.db.transaction().execute(async (db) => {
    const [last] = await weeklyNotesOf(db, week)
    if (last === undefined || last.note === null) return
    await appendWeeklyNote(db, { week, what: 'taken back', note: null, person_id: who.id, at: room.now().toISOString(), invented: last.invented })
  })
  return showNote(room, week)
}

/** The approved notes, for everyone. */
export async function publicNotes({ db, knowledge }: Pick<NoteRoom, 'db' | 'knowledge'>): Promise<SeeingList> {
  const { region } = knowledge().guide
  const notes = (await publishedNotes(db, WEEKS_PUBLIC)).map(({ note }) => SeeingNote.parse(JSON.parse(note)))
  return { helpline: region.helpline, region: region.name, demonstration: region.demonstration, notes }
}

/** Every problem of a week with its public counts; what nothing was reported of is left out. */
async function weekOf(guide: Guide, db: Db, week: IsoWeek): Promise<WeekOfProblem[]> {
  const first = await firstCountedWeek(db)
  if (first === null) return []
  const rows = await countReports(db, { from: weekAfter(sameWeekBefore(week, YEARS_BACK), -12), until: week })
  const plan = risePlan(week, weekAfter(first, 0))
  const sameWeeks = sameWeeksBefore(week, weekAfter(first, 0), YEARS_BACK)
  const byProblem = new Map<string, CountRow[]>()
  for (const row of rows) byProblem.set(row.problem, [...(byProblem.get(row.problem) ?? []), row])
  return [...byProblem].flatMap(([id, own]): WeekOfProblem[] => {
    const problem = problemNamed(guide, id)
    const now = own.filter((row) => row.week === week)
    if (problem === null || now.length === 0) return []
    const byDistrict = new Map<string, number>()
    for (const { district, cases } of now) {
      const place = district !== null && guide.region.districts.has(district) ? district : ELSEWHERE
      byDistrict.set(place, (byDistrict.get(place) ?? 0) + cases)
    }
    const weekly = new Map<string, { readonly reports: number }>()
    for (const row of own) weekly.set(row.week, { reports: (weekly.get(row.week)?.reports ?? 0) + row.reports })
    return [{
      problem: id, name: problem.name, bottomLine: problem.advice.bottomLine, counts: publicCounts(byDistrict, guide.region.leastPublicCount),
      isUnusualRise: unusualRise(weekly, plan).isUnusual,
      usual: earlierYears(weekly, sameWeeks).usual?.mean ?? null,
    }]
  })
}

/** Stands for all places of which no district is known: the asker named none, or one that the region has no more. */
const ELSEWHERE = 'elsewhere'

/** 'What we are seeing, 23 – 29 November 2026'. */
function titleOf(week: IsoWeek): string {
  const monday = new Date(`${mondayOfWeek(week)}T00:00:00Z`)
  const sunday = new Date(monday.getTime() + 6 * 86_400_000)
  const days = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
  return `What we are seeing, ${days.formatRange(monday, sunday)}`
}

function today(now: () => Date): string {
  return now().toISOString().slice(0, 10)
}
