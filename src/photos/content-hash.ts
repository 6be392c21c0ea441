import { createHash } from 'node:crypto'

/** The SHA-256 of these bytes in hexadecimal: the name under which a picture is kept. */
export function contentHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}

/** Whether a name is one that `contentHash` gives. */
export function isContentHash(name: string): boolean {
  return /^[0-9a-f]{64}$/.test(name)
}
