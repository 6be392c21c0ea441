import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { closestNames } from '../../src/guide/index.js'

/** Edits between two texts by the textbook recursion: slow, and obviously right. */
function slowEdits(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length
  if (a[0] === b[0]) return slowEdits(a.slice(1), b.slice(1))
  return 1 + Math.min(slowEdits(a.slice(1), b), slowEdits(a, b.slice(1)), slowEdits(a.slice(1), b.slice(1)))
}

function slowClosest(written: string, names: readonly string[]): string[] {
  const edits = (name: string) => slowEdits(written.toLowerCase(), name.toLowerCase())
  return names
    .filter((name) => edits(name) <= 2 || edits(name) * 3 <= Math.max(name.length, written.length))
    .sort((a, b) => edits(a) - edits(b) || (a < b ? -1 : 1))
    .slice(0, 3)
}

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'B', '-'), maxLength: 6 })

describe('the nearest names', () => {
  it('puts the fewest edits first, and equal ones in order of the alphabet', () => {
    expect(closestNames('slmie', ['slide', 'slime', 'smile', 'lime', 'top'])).toEqual(['slide', 'slime', 'smile'])
    expect(closestNames('slime', ['slimes', 'slime', 'lime'])).toEqual(['slime', 'lime', 'slimes'])
  })

  it('takes capitals for small letters', () => {
    expect(closestNames('SLIME', ['slime'])).toEqual(['slime'])
  })

  it('allows two edits in a short name and a third of a long one', () => {
    expect(closestNames('abc', ['axy'])).toEqual(['axy'])
    expect(closestNames('abc', ['xyz'])).toEqual([])
    expect(closestNames('abcdefghijkl', ['abcdefgh'])).toEqual(['abcdefgh'])
    expect(closestNames('abcdefghijkl', ['abcdefg'])).toEqual([])
  })

  it('gives nothing for no names', () => {
    expect(closestNames('slime', [])).toEqual([])
  })

  it('agrees with the slow way', () => {
    fc.assert(fc.property(word, fc.uniqueArray(word, { maxLength: 8 }), (written, names) => {
      expect(closestNames(written, names)).toEqual(slowClosest(written, names))
    }), { numRuns: 300 })
  })
})
