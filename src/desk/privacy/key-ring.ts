import { createCipheriv, createDecipheriv, createHmac, hkdfSync } from 'node:crypto'

/** One key with the name under which what it sealed remembers it. */
export interface NamedKey {
  readonly id: string
  /** 32 bytes. */
  readonly bytes: Uint8Array
}

/** Seals what must not lie open in the store. */
export interface KeyRing {
  /** Name of the key that seals now. */
  readonly current: string
  /**
   * The text, encrypted and authenticated by AES-256-GCM (NIST SP 800-38D), as `key.iv.tag.ciphertext`.
   * @param place what it belongs to; text moved to another place cannot be opened there
   */
  seal(place: string, text: string): string
  /** The text again. Throws when it was changed, moved, or sealed with a key that is not on the ring. */
  open(place: string, sealed: string): string
  /** Whether something was sealed with the key of today. */
  isCurrent(sealed: string): boolean
  /** A keyed digest (HMAC-SHA-256) of today's key: the same for the same text, and it says nothing about it without the key. */
  mark(text: string): string
}

/** Bytes of a key: 256 bits. */
export const KEY_BYTES = 32
/** The length of nonce that GCM is made for, in bytes; a fresh random one each time. */
const IV_BYTES = 12

/**
 * Makes a ring. The first key seals; the others only open what they sealed once, until it is sealed anew.
 * @param randomBytes source of nonces
 */
export function keyRing(keys: readonly [NamedKey, ...NamedKey[]], randomBytes: (count: number) => Uint8Array): KeyRing {
  const [current] = keys
  const byId = new Map(keys.map((key) => [key.id, key.bytes]))
  // Of today's key, because the older ones will be thrown away; marks kept from before are made anew with what is sealed.
  const marking = Buffer.from(hkdfSync('sha256', current.bytes, '', 'frondline marks', KEY_BYTES))
  return {
    current: current.id,
    seal(place, text) {
      const iv = randomBytes(IV_BYTES)
      const cipher = createCipheriv('aes-256-gcm', current.bytes, iv).setAAD(Buffer.from(`${current.id} ${place}`))
      const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
      return [current.id, inText(iv), inText(cipher.getAuthTag()), inText(sealed)].join('.')
    },
    open(place, text) {
      const [id = '', iv = '', tag = '', sealed = ''] = text.split('.')
      const key = byId.get(id)
      if (key === undefined) throw new Error(`The ${place} is sealed with the key "${id}", which is not among the keys of FRONDLINE_CONTACT_KEY. Put that key behind the first one, after a comma, for one start.`)
      const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(iv, 'base64url'), { authTagLength: 16 })
        .setAAD(Buffer.from(`${id} ${place}`)).setAuthTag(Buffer.from(tag, 'base64url'))
      return Buffer.concat([decipher.update(Buffer.from(sealed, 'base64url')), decipher.final()]).toString('utf8')
    },
    isCurrent: (sealed) => sealed.startsWith(`${current.id}.`),
    mark: (text) => createHmac('sha256', marking).update(text).digest('base64url'),
  }
}

function inText(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('base64url')
}
