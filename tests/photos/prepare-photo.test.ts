import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { preparePhoto } from '../../src/photos/prepare-photo.js'
import { heic, phoneJpeg, png, pngBomb, slope, webp } from './pictures.js'

/** Red and green of the pixel in a corner, as a share of full. */
async function corner(bytes: Uint8Array, where: 'top left' | 'top right'): Promise<[red: number, green: number]> {
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
  const at = where === 'top left' ? 0 : (info.width - 1) * info.channels
  return [(data[at] ?? 0) / 255, (data[at + 1] ?? 0) / 255]
}

describe('preparing a photo', () => {
  it('leaves nothing of the file but its pixels: no place, no camera, no name, no profile', async () => {
    const sent = await phoneJpeg()
    const before = await sharp(sent).metadata()
    expect([before.exif, before.xmp, before.orientation]).toEqual([expect.any(Buffer), expect.any(Buffer), 6])
    expect(sent.includes('Ashdown')).toBe(true)

    const { large, small } = await preparePhoto(sent)
    for (const { bytes } of [large, small]) {
      const { format, exif, xmp, iptc, icc, orientation, tifftagPhotoshop, comments } = await sharp(bytes).metadata()
      expect(format).toBe('jpeg')
      expect([exif, xmp, iptc, icc, orientation, tifftagPhotoshop, comments]).toEqual(Array(7).fill(undefined))
      for (const secret of ['Ashdown', 'garden', 'Lens', 'Exif', 'GPS']) expect(Buffer.from(bytes).includes(secret)).toBe(false)
    }
  })

  it('turns the photo upright before it forgets which way it lay', async () => {
    // Exif 2.3, tag 0x0112: value 6 means that the first row of the file is the right-hand side of the scene.
    const { large, width, height } = await preparePhoto(await phoneJpeg(60, 40))
    expect([width, height]).toEqual([40, 60])
    const [redRight, greenRight] = await corner(large.bytes, 'top right')
    expect(redRight).toBeLessThan(0.1)
    expect(greenRight).toBeLessThan(0.1)
    const [redLeft, greenLeft] = await corner(large.bytes, 'top left')
    expect(redLeft).toBeLessThan(0.1)
    expect(greenLeft).toBeGreaterThan(0.9)
  })

  it.each([['a PNG', png], ['a WebP', webp]])('takes %s and makes a JPEG of it', async (_name, make) => {
    const { large, width, height } = await preparePhoto(await make())
    expect((await sharp(large.bytes).metadata()).format).toBe('jpeg')
    expect([width, height]).toEqual([60, 40])
  })

  it('shows what is see-through on white', async () => {
    const clear = await sharp({ create: { width: 8, height: 8, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } }).png().toBuffer()
    expect(await corner((await preparePhoto(clear)).large.bytes, 'top left')).toEqual([1, 1])
  })

  it('makes a large photo 4000 pixels long and a small copy of 480, and never blows one up', async () => {
    const wide = await sharp(slope(5000, 100), { raw: { width: 5000, height: 100, channels: 3 } }).jpeg().toBuffer()
    const { width, height, small } = await preparePhoto(wide)
    expect([width, height]).toEqual([4000, 80])
    expect(await sharp(small.bytes).metadata()).toMatchObject({ width: 480, height: 10 })
    expect(await preparePhoto(await png(20, 10))).toMatchObject({ width: 20, height: 10 })
  })

  it('makes the same pictures of the same file, and of the same pixels with other metadata', async () => {
    const sent = await phoneJpeg()
    const [one, again] = await Promise.all([preparePhoto(sent), preparePhoto(sent)])
    expect(again.large.hash).toBe(one.large.hash)
    const otherMetadata = Buffer.from(sent.toString('latin1').replace('Rosalind', 'Rosamund'), 'latin1')
    expect(otherMetadata.equals(sent)).toBe(false)
    expect((await preparePhoto(otherMetadata)).large.hash).toBe(one.large.hash)
  })
})

describe('a file that is not taken as a photo', () => {
  it.each([
    ['words', () => Buffer.from('not a picture at all')], ['nothing', () => Buffer.alloc(0)],
    // Formats that the decoder knows and that are none of ours: none of them may be reached.
    ['a drawing in SVG', () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>')],
    ['a GIF', () => sharp(slope(9, 9), { raw: { width: 9, height: 9, channels: 3 } }).gif().toBuffer()],
    ['a TIFF', () => sharp(slope(9, 9), { raw: { width: 9, height: 9, channels: 3 } }).tiff().toBuffer()],
  ])('is %s', async (_name, make) => {
    await expect(preparePhoto(await make())).rejects.toMatchObject({ reason: 'not a picture' })
  })

  it('is one in a format of newer phones', async () => {
    await expect(preparePhoto(heic())).rejects.toMatchObject({ reason: 'phone format' })
    const avif = await sharp(slope(16, 16), { raw: { width: 16, height: 16, channels: 3 } }).avif().toBuffer()
    await expect(preparePhoto(avif)).rejects.toMatchObject({ reason: 'phone format' })
  })

  it('is a photo of which the end is missing', async () => {
    for (const whole of [await phoneJpeg(600, 400), await png(600, 400), await webp(600, 400)]) {
      await expect(preparePhoto(whole.subarray(0, whole.length * 0.6))).rejects.toMatchObject({ reason: 'broken' })
    }
  })

  it('begins as a photo and is something else', async () => {
    const disguised = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.from('<script>alert(1)</script>')])
    await expect(preparePhoto(disguised)).rejects.toMatchObject({ reason: 'broken' })
  })

  it('is a small file that unpacks to a huge picture: it is refused before it is unpacked', async () => {
    const bomb = pngBomb(30_000)
    expect(bomb.length).toBeLessThan(500_000)
    const before = process.memoryUsage().rss
    const started = performance.now()
    await expect(preparePhoto(bomb)).rejects.toMatchObject({ reason: 'too many pixels' })
    expect(performance.now() - started).toBeLessThan(2000)
    expect(process.memoryUsage().rss - before).toBeLessThan(100_000_000)
  })

  it('takes longer to open than the time allowed', async () => {
    // Large enough for a processor several times as quick as today's: 14,000 pixels square were once opened within the second.
    const large = await sharp({ create: { width: 28_000, height: 28_000, channels: 3, background: 'white' }, limitInputPixels: false }).png({ compressionLevel: 1 }).toBuffer()
    await expect(preparePhoto(large, { pixels: 1_000_000_000, seconds: 1 })).rejects.toMatchObject({ reason: 'too slow' })
  }, 60_000)

  it('comes while too many others are being opened', async () => {
    const sent = await phoneJpeg(1500, 1000)
    const tries = await Promise.allSettled(Array.from({ length: 30 }, () => preparePhoto(sent)))
    const refused = tries.filter(({ status }) => status === 'rejected')
    expect(refused).toHaveLength(30 - 18)
    for (const one of refused) expect(one).toMatchObject({ reason: { reason: 'busy' } })
    // Those before them have gone, so the next is let in.
    expect((await preparePhoto(sent)).width).toBe(1000)
  })
})
