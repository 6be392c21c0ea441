import { createHash } from 'node:crypto'

/** Random bytes in a session token: 256 bits. */
export const TOKEN_BYTES = 32

/** How long a session lasts: one long day at the desk, in milliseconds. */
export const SESSION_MS = 12 * 60 * 60 * 1000

/** SHA-256 in hex: what the store keeps of a token, so that a stolen store opens no session. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}
