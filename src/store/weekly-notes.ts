import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { WeeklyNoteTable } from './tables.js'

/** What was done to a week's note, with the name of whoever did it. */
export type WeeklyNoteRow = Selectable<WeeklyNoteTable> & { readonly by: string }

/** Adds that a note was approved or taken back. There is no function that alters or removes one. */
export async function appendWeeklyNote(db: Db, row: Insertable<WeeklyNoteTable>): Promise<void> {
  await db.insertInto('weekly_note').values(row).execute()
}

/** All that was done to the note of one week, the last first. */
export function weeklyNotesOf(db: Db, week: string): Promise<WeeklyNoteRow[]> {
  return db.selectFrom('weekly_note').innerJoin('person', 'person.id', 'weekly_note.person_id')
    .selectAll('weekly_note').select('person.name as by').where('week', '=', week).orderBy('weekly_note.id', 'desc').execute()
}

/** The notes that stand approved, of the last weeks, the newest week first. */
export async function publishedNotes(db: Db, most: number): Promise<{ readonly week: string; readonly note: string; readonly invented: number }[]> {
  const rows = await db.selectFrom('weekly_note').select(['week', 'note', 'invented'])
    .where('id', 'in', (last) => last.selectFrom('weekly_note').select(({ fn }) => fn.max('id').as('id')).groupBy('week'))
    .where('what', '=', 'approved').orderBy('week', 'desc').limit(most).execute()
  return rows.flatMap(({ week, note, invented }) => (note === null ? [] : [{ week, note, invented }]))
}
