import type { OutputInfo, Sharp, SharpOptions } from 'sharp'
import { contentHash } from './content-hash.js'
import { DecoderFault } from './decoder-fault.js'
import { PhotoFault } from './photo-fault.js'
import { pictureKind } from './picture-kind.js'
import { openGate } from './work-gate.js'

/** One JPEG with its content hash. */
export interface Picture {
  readonly hash: string
  readonly bytes: Uint8Array
}

/** A photo as it is kept: nothing of the file that was sent but its pixels. */
export interface PreparedPhoto {
  readonly large: Picture
  readonly small: Picture
  /** Pixels of the large picture. */
  readonly width: number
  readonly height: number
}

/** Limits of one photo; left out, those of the service. */
export interface PhotoLimits {
  /** Most pixels of the picture that was sent. Today's phones make 48 million. */
  readonly pixels: number
  /** Most time for decoding and encoding, in seconds. */
  readonly seconds: number
}

const LIMITS: PhotoLimits = { pixels: 50_000_000, seconds: 20 }

/** Longest sides in pixels: enough for a spore mass through a hand lens, and for a list on a phone. */
const LARGE_SIDE = 4000
const SMALL_SIDE = 480

/** Decoding takes up to 200 MB and a processor each. A phone that waits behind sixteen others waits about ten seconds. */
const gate = openGate(2, 16)

type Decoder = (input: Uint8Array, options?: SharpOptions) => Sharp

/** Loaded with the first photo: the commands that never see one start faster. Node remembers a load that failed as well. */
let decoder: Promise<Decoder> | null = null

async function loadDecoder(): Promise<Decoder> {
  const { default: sharp } = await import('sharp').catch((fault: unknown) => { throw new DecoderFault(fault) })
  // What a photo never needs is not reachable by one: only these three readers are left on.
  sharp.block({ operation: ['VipsForeignLoad'] })
  sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'] })
  // No photo is decoded twice, so libvips need not remember any; and two photos at once share the processors already.
  sharp.cache(false)
  sharp.concurrency(1)
  return sharp
}

/**
 * Decodes a file by its content, turns it upright, and encodes it anew in two sizes without any metadata: no place, no
 * time, no camera, no profile (colours are brought to sRGB first). The same file always makes the same pictures.
 * Throws a PhotoFault that says why a file is not taken, and a DecoderFault when the service can open none.
 */
export function preparePhoto(sent: Uint8Array, limits: PhotoLimits = LIMITS): Promise<PreparedPhoto> {
  const kind = pictureKind(sent)
  if (kind === null) return Promise.reject(new PhotoFault('not a picture'))
  if (kind === 'phone format') return Promise.reject(new PhotoFault('phone format'))
  return gate.pass(async () => {
    const sharp = await (decoder ??= loadDecoder())
    try {
      return await decode(sharp, sent, limits)
    } catch (fault) {
      throw new PhotoFault(reasonOf(fault), { cause: fault })
    }
  })
}

async function decode(sharp: Decoder, sent: Uint8Array, limits: PhotoLimits): Promise<PreparedPhoto> {
  const upright = sharp(sent, { limitInputPixels: limits.pixels, failOn: 'error', animated: false }).autoOrient()
  const large = await encode(upright, LARGE_SIDE, 85, limits.seconds)
  const small = await encode(sharp(large.data), SMALL_SIDE, 75, limits.seconds)
  return {
    large: picture(large.data), small: picture(small.data), width: large.info.width, height: large.info.height,
  }
}

function encode(from: Sharp, side: number, quality: number, seconds: number): Promise<{ data: Buffer; info: OutputInfo }> {
  return from
    .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: 'white' })
    .toColourspace('srgb')
    .jpeg({ quality })
    .timeout({ seconds })
    .toBuffer({ resolveWithObject: true })
}

function picture(bytes: Buffer): Picture {
  return { hash: contentHash(bytes), bytes }
}

/** By the words of libvips, which has no codes. */
function reasonOf(fault: unknown): PhotoFault['reason'] {
  const message = fault instanceof Error ? fault.message : ''
  if (/exceeds pixel limit/i.test(message)) return 'too many pixels'
  if (/timeout/i.test(message)) return 'too slow'
  return 'broken'
}
