import type { WatchNotice, WatchNotices } from '../../../shared/index.js'
import { announce, markNoticeSeen, noticeStands, watchNotice, type WatchNoticeRow, watchNotices } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { problemNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'

/** Notices put aside that are still listed. */
const MOST_SEEN = 100

/** The first reports of watch problems: those that nobody has put aside, then the last of the others. */
export async function showNotices({ db, knowledge }: Pick<Room, 'db' | 'knowledge'>): Promise<WatchNotices> {
  const { guide } = knowledge()
  const rows = await watchNotices(db, MOST_SEEN)
  return {
    notices: rows.map((row): WatchNotice => ({
      notice: String(row.id), problem: row.problem, name: problemNamed(guide, row.problem)?.name ?? row.problem,
      district: row.district === '' ? null : row.district,
      districtName: row.district === '' ? null : guide.region.districts.get(row.district) ?? row.district,
      year: row.year, at: row.at, basis: basisOf(row), ticket: row.ticket_id === null ? null : String(row.ticket_id),
      stands: noticeStands(row), seen: row.seen_at === null ? null : { by: row.seen_name ?? '', at: row.seen_at },
    })),
  }
}

/** Puts a notice aside. Done again it changes nothing. */
export async function seeNotice(room: Pick<Room, 'db' | 'knowledge' | 'now'>, notice: string, who: Member): Promise<WatchNotices> {
  await room.db.transaction().execute(async (db) => {
    const row = await watchNotice(db, Number(notice))
    if (row === undefined) throw new DeskFault('NOTICE_NOT_FOUND')
    if (row.seen_at !== null) return
    await markNoticeSeen(db, row.id, who.id, room.now().toISOString())
    await announce(db, { ticket: null, what: 'notice seen', person: who.id })
  })
  return showNotices(room)
}

function basisOf({ basis }: WatchNoticeRow): WatchNotice['basis'] {
  return basis === 'settled' ? 'settled' : 'concluded'
}
