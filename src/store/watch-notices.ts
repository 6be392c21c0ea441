import type { Selectable } from 'kysely'
import type { Db } from './store.js'
import type { WatchNoticeTable } from './tables.js'

/** A notice with what has become of its case. */
export type WatchNoticeRow = Selectable<WatchNoticeTable> & {
  readonly seen_name: string | null
  readonly ticket_id: number | null
  /** What the case counts as now; null when as nothing any more. */
  readonly counts_as: string | null
  readonly counts_in: string | null
  readonly basis: string | null
}

/** Raises a notice, unless one whose case still says so stands for this problem, district and year. True when it was raised. */
export async function raiseWatchNotice(
  db: Db, { problem, district, year, caseId, at }: { readonly problem: string; readonly district: string; readonly year: number; readonly caseId: number; readonly at: string },
): Promise<boolean> {
  const earlier = await withFate(db).where('watch_notice.problem', '=', problem).where('watch_notice.district', '=', district)
    .where('watch_notice.year', '=', year).execute()
  if (earlier.some((row) => row.case_id === caseId || noticeStands(row))) return false
  const { numInsertedOrUpdatedRows } = await db.insertInto('watch_notice')
    .values({ problem, district, year, case_id: caseId, at, seen_by: null, seen_at: null })
    .onConflict((conflict) => conflict.columns(['problem', 'district', 'year', 'case_id']).doNothing())
    .executeTakeFirst()
  return numInsertedOrUpdatedRows === 1n
}

/** Whether a notice's case still counts as what the notice says. */
export function noticeStands(row: WatchNoticeRow): boolean {
  return row.counts_as === row.problem && (row.counts_in ?? '') === row.district
}

/** The notice with this number, or undefined. */
export function watchNotice(db: Db, id: number): Promise<WatchNoticeRow | undefined> {
  return withFate(db).where('watch_notice.id', '=', id).executeTakeFirst()
}

/** Notices that nobody has put aside, the newest first; then the last of the others. */
export async function watchNotices(db: Db, mostSeen: number): Promise<WatchNoticeRow[]> {
  const open = await withFate(db).where('watch_notice.seen_at', 'is', null).orderBy('watch_notice.id', 'desc').execute()
  const seen = await withFate(db).where('watch_notice.seen_at', 'is not', null).orderBy('watch_notice.id', 'desc').limit(mostSeen).execute()
  return [...open, ...seen]
}

/** Puts a notice aside; whoever was first stays named. */
export async function markNoticeSeen(db: Db, id: number, personId: number, at: string): Promise<void> {
  await db.updateTable('watch_notice').set({ seen_by: personId, seen_at: at }).where('id', '=', id).where('seen_at', 'is', null).execute()
}

function withFate(db: Db) {
  return db.selectFrom('watch_notice')
    .leftJoin('person', 'person.id', 'watch_notice.seen_by')
    .leftJoin('ticket', 'ticket.case_id', 'watch_notice.case_id')
    .leftJoin('season_report', 'season_report.case_id', 'watch_notice.case_id')
    .selectAll('watch_notice')
    .select(['person.name as seen_name', 'ticket.id as ticket_id', 'season_report.problem as counts_as', 'season_report.district as counts_in', 'season_report.basis as basis'])
}
