import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { publicCounts } from '../../../src/season/reports/small-counts.js'

const counted = (counts: Record<string, number>, least = 5) => publicCounts(new Map(Object.entries(counts)), least)
const anyCounts = fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), fc.nat(30)).map((counts) => new Map(Object.entries(counts)))

describe('counts that anyone may see', () => {
  it('are shown whole when none is small', () => {
    expect(counted({ fen: 9, carse: 5, mere: 0 })).toEqual({ total: 14, places: [{ place: 'fen', count: 9 }, { place: 'carse', count: 5 }], isPartHidden: false })
  })

  it('hide a second place beside a single small one, or the total would tell it', () => {
    expect(counted({ fen: 9, carse: 6, mere: 2 })).toEqual({ total: 17, places: [{ place: 'fen', count: 9 }], isPartHidden: true })
  })

  it('hide a further place while the small ones together are still a small count', () => {
    expect(counted({ fen: 9, carse: 6, mere: 1, moor: 1 })).toEqual({ total: 17, places: [{ place: 'fen', count: 9 }], isPartHidden: true })
  })

  it('leave the places out and keep the total when all are small', () => {
    expect(counted({ fen: 3, carse: 4, mere: 1 })).toEqual({ total: 8, places: [], isPartHidden: true })
  })

  it('show nothing of a problem that is rarer than the set size everywhere', () => {
    expect(counted({ fen: 2, carse: 1 })).toEqual({ total: null, places: [], isPartHidden: true })
    expect(counted({})).toEqual({ total: null, places: [], isPartHidden: false })
  })

  it('never show a number below the set size, nor let one be worked out', () => {
    fc.assert(fc.property(anyCounts, fc.integer({ min: 1, max: 12 }), (counts, least) => {
      const { total, places } = publicCounts(counts, least)
      for (const { place, count } of places) {
        expect(count).toBe(counts.get(place))
        expect(count).toBeGreaterThanOrEqual(least)
      }
      if (total === null) return
      expect(total).toBeGreaterThanOrEqual(least)
      const shown = new Set<string>(places.map(({ place }) => place))
      const hidden = [...counts].filter(([place, count]) => count > 0 && !shown.has(place))
      const rest = total - places.reduce((sum, { count }) => sum + count, 0)
      // With what is shown and the total a reader knows `rest` and no more: it is nought, or no small count of one place.
      if (places.length > 0 && hidden.length > 0) {
        expect(rest).toBeGreaterThanOrEqual(least)
        expect(hidden.length).toBeGreaterThanOrEqual(2)
      }
    }))
  })

  it('do not depend on the order in which the places come', () => {
    fc.assert(fc.property(anyCounts, fc.integer({ min: 1, max: 12 }), (counts, least) => {
      expect(publicCounts(new Map([...counts].reverse()), least)).toEqual(publicCounts(counts, least))
    }))
  })
})
