import { z } from 'zod'
import type { BucketSettings } from '../photos/index.js'

/** The variables that say where photos are kept. */
export const photoVariables = {
  FRONDLINE_PHOTOS_BUCKET: z.string().trim().regex(/^[a-z0-9][a-z0-9.-]{1,61}[a-z0-9]$/, 'Expected the name of a bucket, such as larkmoor-photos.').optional(),
  FRONDLINE_PHOTOS_REGION: z.string().trim().regex(/^[a-z0-9-]{1,40}$/, 'Expected the name of the bucket\'s region.').default('us-east-1'),
  FRONDLINE_PHOTOS_ENDPOINT: z.string().trim().regex(/^https?:\/\/[^/?#\s]+$/, 'Expected the address of the bucket\'s service, such as https://store.example.').optional(),
}

/** The bucket that these variables name, or null. */
export function photoBucketOf(given: {
  readonly FRONDLINE_PHOTOS_BUCKET?: string | undefined
  readonly FRONDLINE_PHOTOS_REGION: string
  readonly FRONDLINE_PHOTOS_ENDPOINT?: string | undefined
}): BucketSettings | null {
  if (given.FRONDLINE_PHOTOS_BUCKET === undefined) return null
  return {
    bucket: given.FRONDLINE_PHOTOS_BUCKET, region: given.FRONDLINE_PHOTOS_REGION, endpoint: given.FRONDLINE_PHOTOS_ENDPOINT ?? null,
  }
}
