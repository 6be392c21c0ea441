import type { Insertable, Selectable } from 'kysely'
import type { Db } from './store.js'
import type { PhotoTable } from './tables.js'

export type PhotoRow = Selectable<PhotoTable>

/** Keeps a photo of a case. */
export async function insertPhoto(db: Db, row: Insertable<PhotoTable>): Promise<void> {
  await db.insertInto('photo').values(row).execute()
}

/** Every photo that a case ever had, those removed included, by number. */
export function photosEverOf(db: Db, caseId: number): Promise<PhotoRow[]> {
  return db.selectFrom('photo').selectAll().where('case_id', '=', caseId).orderBy('number').execute()
}

/** Notes that an upload brought this photo; an upload that is noted already stays as it is. */
export async function insertPhotoUpload(db: Db, caseId: number, uploadKey: string, number: number): Promise<void> {
  await db.insertInto('photo_upload').values({ case_id: caseId, upload_key: uploadKey, number })
    .onConflict((conflict) => conflict.columns(['case_id', 'upload_key']).doNothing())
    .execute()
}

/** The photo that an upload of a case brought, removed or not, or undefined. */
export function photoByUpload(db: Db, caseId: number, uploadKey: string): Promise<PhotoRow | undefined> {
  return db.selectFrom('photo_upload')
    .innerJoin('photo', (join) => join
      .onRef('photo.case_id', '=', 'photo_upload.case_id').onRef('photo.number', '=', 'photo_upload.number'))
    .selectAll('photo')
    .where('photo_upload.case_id', '=', caseId).where('photo_upload.upload_key', '=', uploadKey)
    .executeTakeFirst()
}

/** The photo with this number of the case with this link, unless it was removed. */
export function photoByLink(db: Db, link: string, number: number): Promise<PhotoRow | undefined> {
  return db.selectFrom('photo').innerJoin('case_file', 'case_file.id', 'photo.case_id')
    .selectAll('photo')
    .where('case_file.link', '=', link).where('photo.number', '=', number).where('photo.removed_at', 'is', null)
    .executeTakeFirst()
}

/** Takes a photo away from its case. The row stays, so that its number is never given again. */
export async function markPhotoRemoved(db: Db, caseId: number, number: number, at: string): Promise<void> {
  await db.updateTable('photo').set({ removed_at: at })
    .where('case_id', '=', caseId).where('number', '=', number).where('removed_at', 'is', null)
    .execute()
}

/** Takes every photo away from a case, for erasing; their pictures are swept later. */
export async function markPhotosRemoved(db: Db, caseId: number, at: string): Promise<void> {
  await db.updateTable('photo').set({ removed_at: at })
    .where('case_id', '=', caseId).where('removed_at', 'is', null)
    .execute()
}

/** Whether any photo that was not removed shows the picture with this hash. */
export async function isPictureInUse(db: Db, hash: string): Promise<boolean> {
  const row = await db.selectFrom('photo').select('number')
    .where((is) => is.or([is('large_hash', '=', hash), is('small_hash', '=', hash)]))
    .where('removed_at', 'is', null)
    .limit(1).executeTakeFirst()
  return row !== undefined
}
