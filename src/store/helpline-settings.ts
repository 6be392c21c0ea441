import type { Insertable } from 'kysely'
import type { Db } from './store.js'
import type { HelplineSettingTable, PersonChangeTable } from './tables.js'

/** What administrators decided last, as JSON, or undefined when they never decided anything. */
export async function helplineSetting(db: Db): Promise<string | undefined> {
  const row = await db.selectFrom('helpline_setting').select('content').orderBy('id', 'desc').limit(1).executeTakeFirst()
  return row?.content
}

/** Adds a decision; those before stay. */
export async function appendHelplineSetting(db: Db, row: Insertable<HelplineSettingTable>): Promise<void> {
  await db.insertInto('helpline_setting').values(row).execute()
}

/** Writes down that somebody's account was changed. */
export async function appendPersonChange(db: Db, row: Insertable<PersonChangeTable>): Promise<void> {
  await db.insertInto('person_change').values(row).execute()
}
