import type { PhotoHome } from '../../photos/index.js'
import { type Db, isPictureInUse } from '../../store/index.js'
import type { Room } from '../room.js'

/** A picture is let be for this long after it was put: the upload that put it may not have named it yet. */
const GRACE_MS = 30 * 60_000

/**
 * Takes away the pictures that no photo shows: removed ones, and those of uploads that never came to their end. Returns
 * how many. May be interrupted at any place and done again; two at once do no harm.
 */
export async function sweepPictures({ db, photos, now }: Pick<Room, 'db' | 'photos' | 'now'>): Promise<number> {
  const before = new Date(now().getTime() - GRACE_MS).toISOString()
  let swept = 0
  for await (const { hash, putAt } of photos.list()) {
    if (putAt < before && await sweepOne(db, photos, hash, before)) swept++
  }
  return swept
}

async function sweepOne(db: Db, photos: PhotoHome, hash: string, before: string): Promise<boolean> {
  if (await isPictureInUse(db, hash)) return false
  // Put anew since the list was made: an upload is about to name it. What little time is left until the removal is
  // covered by the upload, which looks again once it has named its picture.
  const putAt = await photos.putAt(hash)
  if (putAt === null || putAt >= before) return false
  await photos.remove(hash)
  return true
}
