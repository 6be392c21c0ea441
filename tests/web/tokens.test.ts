import { readdir, readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { contrast, parseHex, type Rgb } from '../../src/web/panel/accent.js'

const web = new URL('../../src/web/', import.meta.url)
const tokens = await readFile(new URL('tokens.css', web), 'utf8')

/** The block that begins with this text, up to the brace that closes it. */
function block(begins: string): string {
  const from = tokens.indexOf(begins)
  if (from < 0) throw new Error(`tokens.css has no block that begins with "${begins}".`)
  return tokens.slice(from, tokens.indexOf('\n}', from))
}

/** The colours of a block by name, each as [light, dark]. */
function coloursOf(text: string): Map<string, readonly [Rgb, Rgb]> {
  const named = new Map<string, readonly [Rgb, Rgb]>()
  for (const [, name = '', light = '', dark = ''] of text.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)) {
    const pair = [parseHex(light), parseHex(dark)] as const
    if (pair[0] !== null && pair[1] !== null) named.set(name, [pair[0], pair[1]])
  }
  return named
}

const plain = coloursOf(block(':root, .frondline {'))
const more = new Map([...plain, ...coloursOf(block('@media (prefers-contrast: more)'))])

/** Every writing with the grounds that it stands on. */
const WRITING: readonly (readonly [string, readonly string[]])[] = [
  ['ink', ['desk', 'paper', 'paper-shade', 'accent-wash', 'alarm-wash', 'care-wash']],
  ['ink-soft', ['desk', 'paper', 'paper-shade', 'accent-wash', 'care-wash']],
  ['accent', ['desk', 'paper', 'paper-shade', 'accent-wash', 'care-wash']],
  ['alarm', ['paper', 'paper-shade', 'alarm-wash']],
  ['care', ['paper', 'paper-shade', 'care-wash']],
  ['on-accent', ['accent']], ['on-alarm', ['alarm']], ['paper', ['care']],
]
const pairs = WRITING.flatMap(([ink, grounds]) => grounds.map(ground => [ink, ground] as const))

function worst(colours: typeof plain, ink: string, ground: string): number {
  const [one, other] = [colours.get(ink), colours.get(ground)]
  if (one === undefined || other === undefined) throw new Error(`tokens.css names no colour "${one === undefined ? ink : ground}".`)
  return Math.min(contrast(one[0], other[0]), contrast(one[1], other[1]))
}

// WCAG 2.2: text 4.5 to 1 (1.4.3, level AA) and 7 to 1 (1.4.6, level AAA); edges of what is used 3 to 1 (1.4.11, level AA).
describe('the colours', () => {
  it.each(pairs)('let %s be read on %s, in light and dark', (ink, ground) => {
    expect(worst(plain, ink, ground)).toBeGreaterThanOrEqual(4.5)
  })

  it.each(pairs)('let %s be read on %s by people who ask for more contrast', (ink, ground) => {
    expect(worst(more, ink, ground)).toBeGreaterThanOrEqual(7)
  })

  it.each(['paper', 'paper-shade'])('let the edge of a field be seen on %s', ground => {
    expect(worst(plain, 'rule-strong', ground)).toBeGreaterThanOrEqual(3)
  })

  it('stand in one file: no other style of ours names one', async () => {
    const names = (await readdir(web, { recursive: true })).filter(name => name.endsWith('.css') && !/tokens\.css$|demo\.css$/.test(name))
    expect(names.length).toBeGreaterThan(5)
    for (const name of names) {
      const text = await readFile(new URL(name, web), 'utf8')
      expect(text.match(/#[0-9a-f]{3,8}\b(?=[^{}]*[;}])|\brgba?\(|\b(?:CanvasText|Highlight|white|black)\b(?!-)/gi) ?? [], name).toEqual([])
    }
  })
})
