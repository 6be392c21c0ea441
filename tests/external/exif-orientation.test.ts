import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { preparePhoto } from '../../src/photos/index.js'
import { slope } from '../photos/pictures.js'

type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right'

/**
 * Where the first pixel of the file's first row, and the last of that row, belong in the scene.
 * Source: TIFF Revision 6.0 (1992), tag 274 Orientation, which Exif 2.3 takes over as tag 0x0112; read from memory.
 */
const ORIENTATIONS: readonly (readonly [value: number, first: Corner, last: Corner])[] = [
  [1, 'top left', 'top right'], [2, 'top right', 'top left'], [3, 'bottom right', 'bottom left'], [4, 'bottom left', 'bottom right'],
  [5, 'top left', 'bottom left'], [6, 'top right', 'bottom right'], [7, 'bottom right', 'top right'], [8, 'bottom left', 'top left'],
]

describe('a photo lying as its file says', () => {
  it.each(ORIENTATIONS)('with orientation %i has its first pixel %s and the end of its first row %s', async (orientation, first, last) => {
    const sent = await sharp(slope(60, 40), { raw: { width: 60, height: 40, channels: 3 } })
      .withMetadata({ orientation }).jpeg({ quality: 100, chromaSubsampling: '4:4:4' }).toBuffer()
    const { large } = await preparePhoto(sent)
    // In the file, red grows along a row and green from row to row.
    expect(await cornerLike(large.bytes, 0, 0)).toBe(first)
    expect(await cornerLike(large.bytes, 255, 0)).toBe(last)
  })
})

/** The corner whose colour is nearest to this red and green. */
async function cornerLike(bytes: Uint8Array, red: number, green: number): Promise<Corner> {
  const { data, info: { width, height, channels } } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
  const places: readonly (readonly [Corner, number, number])[] = [
    ['top left', 0, 0], ['top right', width - 1, 0], ['bottom left', 0, height - 1], ['bottom right', width - 1, height - 1],
  ]
  const far = ([, x, y]: readonly [Corner, number, number]): number => {
    const at = (y * width + x) * channels
    return Math.hypot((data[at] ?? 0) - red, (data[at + 1] ?? 0) - green)
  }
  return places.reduce((nearest, place) => (far(place) < far(nearest) ? place : nearest))[0]
}
