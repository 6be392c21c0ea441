import { MAX_PHOTOS, type PhotoKept } from '../../../shared/index.js'
import { DecoderFault, PhotoFault, type PhotoFaultReason, type PhotoHome, type PreparedPhoto, preparePhoto } from '../../photos/index.js'
import { type Db, insertPhoto, insertPhotoUpload, photoByUpload, type PhotoRow, photosEverOf } from '../../store/index.js'
import { applyChange, inRounds } from '../cases/change-case.js'
import { findCase } from '../cases/find-case.js'
import type { CaseFile } from '../cases/case-file.js'
import { DeskFault, type DeskFaultCode } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { showCaseAt } from '../views/show-case.js'
import { photoAdded } from './photo-changes.js'

/** Reads the file that is being sent. Called once at most, and not at all when it is not needed. */
export type ReadFile = () => Promise<Uint8Array>

/** Most photos that one case takes in its life, those removed included. */
const MOST_EVER = 40

/**
 * Keeps a photo of a case, before or after hand-over. The same upload key again answers the photo that it brought; a
 * picture that the case has already is not kept twice. The pictures are safe in their home before the case names them.
 */
export async function addPhoto(
  room: Room, link: string, uploadKey: string, read: ReadFile, who: Member | null,
): Promise<PhotoKept> {
  const before = await findCase(room.db, link)
  const number = await numberOfUpload(room.db, before, uploadKey) ?? await keepFile(room, before, uploadKey, read, who)
  return { photo: number, case: await showCaseAt(room, link, who) }
}

async function keepFile(
  room: Room, before: CaseFile, uploadKey: string, read: ReadFile, who: Member | null,
): Promise<number> {
  // Told before the file is read: the sender of a seventh photo should not wait for its upload.
  refuseTooMany(await photosEverOf(room.db, before.id))
  const prepared = await prepare(await read())
  await putPictures(room.photos, prepared)
  const number = await nameInCase(room, before.link, uploadKey, prepared, who)
  // The sweep of unused pictures may have met these between the putting and the naming.
  if (!await room.photos.has(prepared.large.hash) || !await room.photos.has(prepared.small.hash)) {
    await putPictures(room.photos, prepared)
  }
  return number
}

async function prepare(sent: Uint8Array): Promise<PreparedPhoto> {
  try {
    return await preparePhoto(sent)
  } catch (fault) {
    if (fault instanceof DecoderFault) throw new DeskFault('PHOTOS_OUT_OF_ORDER', {}, { cause: fault })
    if (!(fault instanceof PhotoFault)) throw fault
    throw new DeskFault(CODES[fault.reason], fault.reason === 'busy' ? { retryAfterSeconds: BUSY_SECONDS } : {})
  }
}

const BUSY_SECONDS = 10

const CODES: Readonly<Record<PhotoFaultReason, DeskFaultCode>> = {
  'not a picture': 'PHOTO_NOT_A_PICTURE', 'phone format': 'PHOTO_IN_PHONE_FORMAT', broken: 'PHOTO_BROKEN',
  'too many pixels': 'PHOTO_TOO_MANY_PIXELS', 'too slow': 'PHOTO_TOO_SLOW', busy: 'PHOTOS_BUSY',
}

async function putPictures(home: PhotoHome, { large, small }: PreparedPhoto): Promise<void> {
  await home.put(large.hash, large.bytes)
  await home.put(small.hash, small.bytes)
}

/** Names the photo in its case. */
function nameInCase(
  room: Room, link: string, uploadKey: string, prepared: PreparedPhoto, who: Member | null,
): Promise<number> {
  return inRounds(() => room.db.transaction().execute(async (db) => {
    const now = await findCase(db, link)
    const known = await numberOfUpload(db, now, uploadKey)
    return known ?? nameOnce(room, db, now, uploadKey, prepared, who)
  }))
}

async function nameOnce(
  room: Room, db: Db, now: CaseFile, uploadKey: string, { large, small, width, height }: PreparedPhoto, who: Member | null,
): Promise<number | 'beaten'> {
  const ever = await photosEverOf(db, now.id)
  const same = ever.find((photo) => photo.removed_at === null && photo.large_hash === large.hash)
  const number = same?.number ?? ever.length + 1
  if (same === undefined) {
    refuseTooMany(ever)
    if (await applyChange(room, db, now, who, photoAdded(number, large.hash)) === 'beaten') return 'beaten'
    await insertPhoto(db, {
      case_id: now.id, number, large_hash: large.hash, small_hash: small.hash, width, height,
      bytes: large.bytes.length, person_id: who?.id ?? null, at: room.now().toISOString(), removed_at: null,
    })
  }
  await insertPhotoUpload(db, now.id, uploadKey, number)
  return number
}

async function numberOfUpload(db: Db, file: CaseFile, uploadKey: string): Promise<number | null> {
  const photo = await photoByUpload(db, file.id, uploadKey)
  if (photo === undefined) return null
  // A try that was long on its way must not bring back what was removed meanwhile.
  if (photo.removed_at !== null) throw new DeskFault('PHOTO_REMOVED')
  return photo.number
}

function refuseTooMany(ever: readonly PhotoRow[]): void {
  const now = ever.filter(({ removed_at }) => removed_at === null).length
  if (now >= MAX_PHOTOS || ever.length >= MOST_EVER) {
    throw new DeskFault('PHOTOS_FULL', { words: { most: String(MAX_PHOTOS) } })
  }
}
