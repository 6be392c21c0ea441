import type { Insertable, Kysely, Selectable } from 'kysely'
import { madeOutOnce } from './made-out-once.js'
import type { Db } from './store.js'
import type { CaseFileTable, Tables } from './tables.js'

export type CaseRow = Selectable<CaseFileTable>

/** Keeps a new case and returns its row number. */
export async function insertCase(db: Db, row: Insertable<CaseFileTable>): Promise<number> {
  const { id } = await db.insertInto('case_file').values(row).returning('id').executeTakeFirstOrThrow()
  return id
}

/** The case with this link, or undefined. */
export async function caseByLink(db: Db, link: string): Promise<CaseRow | undefined> {
  return (await byLink(db, [link]))[0]
}

const byLink = madeOutOnce((db) => db.selectFrom('case_file').selectAll().where('link', '=', ''))

/** The case with this row number, or undefined. */
export function caseById(db: Db, id: number): Promise<CaseRow | undefined> {
  return db.selectFrom('case_file').selectAll().where('id', '=', id).executeTakeFirst()
}

/** The case that was opened with this key, by the key's hash, or undefined. */
export function caseByOpeningKey(db: Db, hash: string): Promise<CaseRow | undefined> {
  return db.selectFrom('case_file').selectAll().where('opening_key_hash', '=', hash).executeTakeFirst()
}

/** As much of a case as tells whether what was made of it still holds. */
export interface CaseStanding {
  readonly revision: number
  /** The number of its ticket, or null. */
  readonly ticket: number | null
}

/** At which revision the case with this link is, and whether it has a ticket; undefined when there is no such case. */
export async function caseStanding(db: Kysely<Tables>, link: string): Promise<CaseStanding | undefined> {
  return (await standing(db, [link]))[0]
}

const standing = madeOutOnce((db) => db.selectFrom('case_file').leftJoin('ticket', 'ticket.case_id', 'case_file.id')
  .select(['case_file.revision', 'ticket.id as ticket']).where('case_file.link', '=', ''))

/** What one change may alter in a case; what it leaves out stays. */
type CaseAdvance = Partial<Pick<CaseRow, 'evidence' | 'words' | 'matched' | 'language' | 'guide_hash'>>

/**
 * Moves a case from one revision to the next. False when the case is no longer at that revision: somebody else was
 * first, and nothing is changed.
 */
export async function advanceCase(db: Db, id: number, from: number, advance: CaseAdvance): Promise<boolean> {
  const { numUpdatedRows } = await db.updateTable('case_file')
    .set({ ...advance, revision: from + 1 })
    .where('id', '=', id).where('revision', '=', from)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** The open calls of one person, newest first. */
export function openCallsOf(db: Db, personId: number): Promise<CaseRow[]> {
  return db.selectFrom('case_file').selectAll()
    .where('call_of', '=', personId).where('call_closed_at', 'is', null)
    .orderBy('opened_at', 'desc').orderBy('id', 'desc')
    .execute()
}

/** Closes a call; a call that is closed already keeps its first closing time. */
export async function closeCall(db: Db, id: number, at: string): Promise<void> {
  await db.updateTable('case_file').set({ call_closed_at: at })
    .where('id', '=', id).where('call_closed_at', 'is', null)
    .execute()
}
