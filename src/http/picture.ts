import type { Response } from 'express'
import { RequestFault } from './request-fault.js'

/** A picture as the answer of a route. */
export interface Picture {
  readonly bytes: Uint8Array
  readonly hash: string
}

/**
 * How long a browser may show a picture without asking, in seconds. Short, so that a removed photo is soon gone
 * everywhere; asking again costs no transfer.
 */
const FRESH_SECONDS = 300

/**
 * Sends a JPEG. Only the asker's own browser may keep it. Should somebody open it as a page, it can run and load nothing.
 * A panel on a page elsewhere may show it: whoever names the address holds the case's link already.
 */
export function sendPicture(response: Response, { bytes, hash }: Picture): void {
  response.status(200).set({
    'content-type': 'image/jpeg', 'cache-control': `private, max-age=${FRESH_SECONDS}`, etag: `"${hash}"`,
    'content-security-policy': "default-src 'none'; sandbox", 'content-disposition': 'inline; filename="photo.jpg"',
    'cross-origin-resource-policy': 'cross-origin', 'x-content-type-options': 'nosniff',
  })
  if (response.req.fresh) response.status(304).end()
  else response.end(bytes)
}

/** Whether what a route answered is a picture; anything else is a fault of ours. */
export function asPicture(reply: unknown): Picture {
  if (typeof reply === 'object' && reply !== null && 'bytes' in reply && 'hash' in reply
    && reply.bytes instanceof Uint8Array && typeof reply.hash === 'string') return { bytes: reply.bytes, hash: reply.hash }
  throw new RequestFault('UNEXPECTED')
}
