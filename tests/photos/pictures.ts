import { deflateSync } from 'node:zlib'
import sharp from 'sharp'

/** A picture in which no two parts look the same: red grows to the right, green downwards. */
export function slope(width: number, height: number, blue = 0): Buffer {
  const pixels = Buffer.alloc(width * height * 3)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 3
      pixels[at] = Math.round((x / Math.max(1, width - 1)) * 255)
      pixels[at + 1] = Math.round((y / Math.max(1, height - 1)) * 255)
      pixels[at + 2] = blue
    }
  }
  return pixels
}

/** A JPEG as a phone saves it: with the place, the camera and the owner's name in it, lying on its side. */
export function phoneJpeg(width = 60, height = 40, blue = 0): Promise<Buffer> {
  return sharp(slope(width, height, blue), { raw: { width, height, channels: 3 } })
    .withMetadata({ orientation: 6 })
    .withExif({
      IFD0: { Make: 'Larkmoor Lens', Artist: 'Rosalind Ashdown', ImageDescription: 'my back garden' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 3230/100', GPSLongitudeRef: 'W', GPSLongitude: '0/1 7/1 4366/100' },
    })
    .withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description>Ashdown</rdf:Description></rdf:RDF></x:xmpmeta>')
    .jpeg({ quality: 95 }).toBuffer()
}

export function png(width = 60, height = 40): Promise<Buffer> {
  return sharp(slope(width, height), { raw: { width, height, channels: 3 } }).png().toBuffer()
}

export function webp(width = 60, height = 40): Promise<Buffer> {
  return sharp(slope(width, height), { raw: { width, height, channels: 3 } }).webp({ lossless: true }).toBuffer()
}

/** The beginning of a file in the format of newer phones (ISO/IEC 23008-12, brand heic). */
export function heic(): Buffer {
  return Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic\0\0\0\0mif1heic', 'latin1'), Buffer.alloc(100)])
}

/** A small PNG file that says it is huge: every pixel is there, and all are black, so that it packs to almost nothing. */
export function pngBomb(side: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(side, 0)
  header.writeUInt32BE(side, 4)
  header.set([1, 0, 0, 0, 0], 8) // one bit of grey a pixel
  const pixels = deflateSync(Buffer.alloc((Math.ceil(side / 8) + 1) * side), { level: 9 })
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', header), chunk('IDAT', pixels), chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(type: string, content: Buffer): Buffer {
  const typed = Buffer.concat([Buffer.from(type, 'latin1'), content])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(content.length)
  const sum = Buffer.alloc(4)
  sum.writeUInt32BE(crc32(typed))
  return Buffer.concat([length, typed, sum])
}

/** PNG Specification, third edition, annex D. */
function crc32(bytes: Buffer): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}
