import { create } from 'qrcode'

export interface QrPath {
  /** Squares along one side, the quiet margin included. */
  readonly side: number
  /** An SVG path of the dark squares, one unit each. */
  readonly path: string
}

/** A QR drawing of a text as one SVG path, with the quiet margin of four squares that ISO/IEC 18004 asks for (from memory). */
export function qrPath(text: string): QrPath {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules
  let path = ''
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      if (data[row * size + column] === 1) path += `M${column + QUIET} ${row + QUIET}h1v1h-1z`
    }
  }
  return { side: size + 2 * QUIET, path }
}

const QUIET = 4
