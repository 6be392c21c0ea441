import { KEY_BYTES } from '../desk/index.js'

/** Reads a key from its base64, or null when it is not 32 bytes. */
export function keyFromText(text: string): Uint8Array | null {
  const bytes = /^[A-Za-z0-9+/_-]+={0,2}$/.test(text) ? Buffer.from(text, 'base64') : Buffer.alloc(0)
  return bytes.length === KEY_BYTES ? bytes : null
}
