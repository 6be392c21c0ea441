import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accentPair, contrast, parseHex } from '../../src/web/panel/accent.js'

describe('contrast of two colours', () => {
  // WCAG 2.2, definition of contrast ratio: from 1 to 21, white on black being 21.
  it('is 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 10)
    expect(contrast([12, 99, 200], [12, 99, 200])).toBe(1)
  })

  // #767676 is widely given as the lightest grey that reaches 4.5 to 1 on white (from memory; the value is 4.54).
  it('puts the lightest passing grey on white at 4.54', () => {
    expect(contrast([0x76, 0x76, 0x76], [255, 255, 255])).toBeCloseTo(4.54, 2)
    expect(contrast([0x77, 0x77, 0x77], [255, 255, 255])).toBeLessThan(4.5)
  })
})

describe('a host page’s accent', () => {
  it('is kept as it is where it can be read', () => {
    expect(accentPair('#7a3b12')?.light).toBe('#7a3b12')
    expect(accentPair(' #fff ')?.dark).toBe('#ffffff')
  })

  it('is refused when it is no hexadecimal colour', () => {
    for (const text of ['', 'green', '#12', '#12345', 'rgb(1,2,3)', '#ggg', 'url(x)', '#fff;}']) expect(accentPair(text)).toBeNull()
  })

  it('reaches 4.5 to 1 on the sheet in light and dark, whatever the colour', () => {
    const papers = { light: [0xfa, 0xfb, 0xf7], dark: [0x18, 0x20, 0x1e] } as const
    fc.assert(fc.property(fc.integer({ min: 0, max: 0xffffff }), number => {
      const pair = accentPair(`#${number.toString(16).padStart(6, '0')}`)
      for (const side of ['light', 'dark'] as const) {
        const colour = parseHex(pair?.[side] ?? '')
        expect(colour).not.toBeNull()
        if (colour !== null) expect(contrast(colour, papers[side])).toBeGreaterThanOrEqual(4.5)
      }
    }))
  })
})
