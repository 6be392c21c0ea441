import { z } from 'zod'
import { CaseView } from './case.js'

/** Most photos that a case holds at once. */
export const MAX_PHOTOS = 6
/** Largest photo taken, in bytes as it is sent. */
export const MAX_PHOTO_BYTES = 12 * 1024 * 1024
/**
 * What to write into `accept` of a file input. Naming these kinds makes a phone that saves its photos in a format of its
 * own (HEIC) turn them into JPEG while they are chosen.
 */
export const PHOTO_KINDS = 'image/jpeg,image/png,image/webp'

/**
 * Chosen by the client, once for each photo that is to be sent, before the first try. Sending again with the same key is
 * always safe: it answers the photo that the first try kept.
 */
export const UploadKey = z.string().regex(/^[A-Za-z0-9_-]{16,64}$/).meta({ id: 'UploadKey' })

/** A photo's number in its case as it stands in an address; the first is 1, and no number is given twice. */
export const PhotoNumber = z.string().regex(/^[1-9][0-9]{0,3}$/)

/** Both sizes are JPEG: 'large' at most 4000 pixels a side, 'small' at most 480. */
export type PhotoSize = 'large' | 'small'

/**
 * What an upload answers. PUT /api/cases/:link/photos/:upload with the file itself as the body, whatever its content
 * type. The case is as it stands afterwards; a photo does not make a change stale that is under way meanwhile.
 */
export const PhotoKept = z.object({ photo: z.number().int(), case: CaseView }).meta({ id: 'PhotoKept' })
export type PhotoKept = z.infer<typeof PhotoKept>

/** Where a photo is shown: for `src` of an image on our own pages, or to fetch on a page elsewhere. */
export function photoAddress(link: string, photo: number, size: PhotoSize): string {
  return `/api/cases/${link}/photos/${photo}/${size}`
}
