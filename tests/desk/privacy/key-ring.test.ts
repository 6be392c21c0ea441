import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { keyRing, type NamedKey } from '../../../src/desk/index.js'

const key = (id: string, fill: number): NamedKey => ({ id, bytes: new Uint8Array(32).fill(fill) })
const ring = (...keys: [NamedKey, ...NamedKey[]]) => keyRing(keys, randomBytes)

describe('the key ring', () => {
  it('opens what it sealed, and no two sealings are alike', () => {
    const keys = ring(key('new', 1))
    const sealed = keys.seal('ticket 1', 'ashdown@larkmoor.example 🌱')
    expect(keys.open('ticket 1', sealed)).toBe('ashdown@larkmoor.example 🌱')
    expect(keys.seal('ticket 1', 'ashdown@larkmoor.example 🌱')).not.toBe(sealed)
    expect(sealed).not.toContain('ashdown')
  })

  it('refuses what was changed, moved to another place, or sealed with another key of the same name', () => {
    const keys = ring(key('new', 1))
    const sealed = keys.seal('ticket 1', 'secret')
    const parts = sealed.split('.')
    const flip = (text = '') => `${text.startsWith('A') ? 'B' : 'A'}${text.slice(1)}`
    for (const place of [1, 2, 3]) {
      const changed = parts.map((part, at) => (at === place ? flip(part) : part)).join('.')
      expect(() => keys.open('ticket 1', changed)).toThrow()
    }
    expect(() => keys.open('ticket 2', sealed)).toThrow()
    expect(() => ring(key('new', 2)).open('ticket 1', sealed)).toThrow()
    // A tag cut short would be guessed quickly.
    expect(() => keys.open('ticket 1', [parts[0], parts[1], Buffer.from(parts[2] ?? '', 'base64url').subarray(0, 4).toString('base64url'), parts[3]].join('.'))).toThrow()
  })

  it('opens what an older key sealed, seals with the first, and knows which is which', () => {
    const old = ring(key('old', 1)).seal('ticket 1', 'secret')
    const both = ring(key('new', 2), key('old', 1))
    expect(both.open('ticket 1', old)).toBe('secret')
    expect(both.isCurrent(old)).toBe(false)
    expect(both.isCurrent(both.seal('ticket 1', 'secret'))).toBe(true)
    expect(() => ring(key('new', 2)).open('ticket 1', old)).toThrow('sealed with the key "old"')
  })

  it('marks the same text alike and says nothing without the key', () => {
    expect(ring(key('a', 1)).mark('x')).toBe(ring(key('b', 1)).mark('x'))
    expect(ring(key('a', 1)).mark('x')).not.toBe(ring(key('a', 2)).mark('x'))
  })

  it('marks with the key of today, so that the older ones can be thrown away', () => {
    const both = ring(key('new', 2), key('old', 1))
    expect(both.mark('x')).toBe(ring(key('new', 2)).mark('x'))
    expect(both.mark('x')).not.toBe(ring(key('old', 1)).mark('x'))
  })
})
