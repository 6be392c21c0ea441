/** An accent as it is used on light and on dark paper. */
export interface AccentPair {
  readonly light: string
  readonly dark: string
}

/**
 * Makes a host page's accent colour ('#rgb' or '#rrggbb') readable on our paper: darkened on light paper and lightened on
 * dark paper until it reaches 4.5 to 1, the least contrast WCAG 2.2 (1.4.3) allows for text. Null when the text is no such colour.
 */
export function accentPair(text: string): AccentPair | null {
  const colour = parseHex(text.trim())
  if (colour === null) return null
  return { light: towards(colour, BLACK, LIGHT_PAPER), dark: towards(colour, WHITE, DARK_PAPER) }
}

/** Contrast of two colours after WCAG 2.2, 1 to 21. */
export function contrast(one: Rgb, other: Rgb): number {
  const [lighter, darker] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number]
  return (lighter + 0.05) / (darker + 0.05)
}

export type Rgb = readonly [number, number, number]

export function parseHex(text: string): Rgb | null {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text)
  const long = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text)
  const parts = short?.slice(1).map(part => part + part) ?? long?.slice(1)
  if (parts === undefined) return null
  const [red = 0, green = 0, blue = 0] = parts.map(part => Number.parseInt(part, 16))
  return [red, green, blue]
}

function towards(colour: Rgb, end: Rgb, paper: Rgb): string {
  for (let share = 0; share <= 1; share += 0.05) {
    const mixed = mix(colour, end, share)
    if (contrast(mixed, paper) >= LEAST_CONTRAST) return toHex(mixed)
  }
  return toHex(end)
}

function mix(one: Rgb, other: Rgb, share: number): Rgb {
  return [0, 1, 2].map(part => Math.round((one[part] ?? 0) * (1 - share) + (other[part] ?? 0) * share)) as unknown as Rgb
}

function toHex(colour: Rgb): string {
  return '#' + colour.map(part => part.toString(16).padStart(2, '0')).join('')
}

function luminance(colour: Rgb): number {
  const [red = 0, green = 0, blue = 0] = colour.map(part => {
    const share = part / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

const BLACK: Rgb = [0, 0, 0]
const WHITE: Rgb = [255, 255, 255]
/** The darkest light paper and the lightest dark paper an accent stands on; see tokens.css (paper-shade, accent-wash). */
const LIGHT_PAPER: Rgb = [0xdc, 0xeb, 0xe8]
const DARK_PAPER: Rgb = [0x1f, 0x3d, 0x3c]
const LEAST_CONTRAST = 4.5
