import type { Selectable } from 'kysely'
import { madeOutOnce } from './made-out-once.js'
import type { Db } from './store.js'
import type { CaseChangeTable } from './tables.js'

export type CaseChangeRow = Selectable<CaseChangeTable>
type NewCaseChange = Pick<CaseChangeRow, 'case_id' | 'revision' | 'kind' | 'content' | 'person_id' | 'at'>

/** Adds one change to a case's history. There is no function that alters or removes one. */
export async function appendCaseChange(db: Db, { case_id, revision, kind, content, person_id, at }: NewCaseChange): Promise<void> {
  await append(db, [case_id, revision, kind, content, person_id, at])
}

const append = madeOutOnce((db) => db.insertInto('case_change').values({ case_id: 0, revision: 0, kind: '', content: '', person_id: 0, at: '' }))

/** The changes that came after this revision, first change first. */
export function caseChangesSince(db: Db, caseId: number, revision: number): Promise<CaseChangeRow[]> {
  return db.selectFrom('case_change').selectAll()
    .where('case_id', '=', caseId).where('revision', '>', revision).orderBy('revision')
    .execute()
}

/** A case's whole history, first change first; of one kind when a kind is given. */
export function caseChanges(db: Db, caseId: number, kind?: string): Promise<CaseChangeRow[]> {
  const all = db.selectFrom('case_change').selectAll().where('case_id', '=', caseId).orderBy('revision')
  return (kind === undefined ? all : all.where('kind', '=', kind)).execute()
}
