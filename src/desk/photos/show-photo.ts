import type { PhotoSize, PhotoView } from '../../../shared/index.js'
import { type Db, photoByLink, photosEverOf } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'

/** A JPEG to show. */
export interface ShownPhoto {
  readonly bytes: Uint8Array
  /** Changes when and only when the bytes do. */
  readonly hash: string
}

/** One photo of a case in one size. */
export async function showPhoto(room: Room, link: string, photo: string, size: PhotoSize): Promise<ShownPhoto> {
  const row = await photoByLink(room.db, link, Number(photo))
  if (row === undefined) throw new DeskFault('PHOTO_NOT_FOUND')
  const hash = size === 'large' ? row.large_hash : row.small_hash
  const bytes = await room.photos.get(hash)
  if (bytes === null) throw new Error(`The picture ${hash} of case ${row.case_id} is not in its home.`)
  return { bytes, hash }
}

/** The photos of a case, by number. */
export async function photosOf(db: Db, caseId: number): Promise<PhotoView[]> {
  const rows = await photosEverOf(db, caseId)
  return rows.filter(({ removed_at }) => removed_at === null).map(({ number, width, height, at, person_id }) => (
    { photo: number, width, height, at, from: person_id === null ? 'asker' : 'helpline' }))
}
