/** The kinds of picture that are taken, and the formats that phones save and we cannot open. */
export type PictureKind = 'jpeg' | 'png' | 'webp' | 'phone format'

/** The kind of a picture by its first bytes, or null when they are those of no picture that we know. */
export function pictureKind(bytes: Uint8Array): PictureKind | null {
  return KINDS.find(([, begins]) => begins(bytes))?.[0] ?? null
}

const at = (bytes: Uint8Array, from: number, to: number): string => Buffer.from(bytes.subarray(from, to)).toString('latin1')

const KINDS: readonly (readonly [PictureKind, (bytes: Uint8Array) => boolean])[] = [
  // ISO/IEC 10918-1: start of image, then the next marker.
  ['jpeg', (bytes) => at(bytes, 0, 3) === '\xff\xd8\xff'],
  // PNG Specification, third edition, section 5.2.
  ['png', (bytes) => at(bytes, 0, 8) === '\x89PNG\r\n\x1a\n'],
  // RFC 9649, section 2.4.
  ['webp', (bytes) => at(bytes, 0, 4) === 'RIFF' && at(bytes, 8, 12) === 'WEBP'],
  // ISO/IEC 23008-12: a file type box whose brand is one of still pictures in HEVC or AV1.
  ['phone format', (bytes) => at(bytes, 4, 8) === 'ftyp' && PHONE_BRANDS.has(at(bytes, 8, 12))],
]

const PHONE_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1', 'avif', 'avis'])
