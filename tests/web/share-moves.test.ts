import { describe, expect, it } from 'vitest'
import type { LikelyLine } from '../../shared/index.js'
import { shareMoves } from '../../src/web/bench/share-moves.js'

describe('what new evidence moved', () => {
  it('is nothing while there is no earlier differential', () => {
    expect(shareMoves(null, [likely('scab', 0.9)]).size).toBe(0)
  })

  it('names each cause that moved enough, with where it came from and which way', () => {
    const moves = shareMoves([likely('scab', 0.5), likely('rust', 0.3), likely(null, 0.2)], [likely('scab', 0.8), likely('rust', 0.01), likely(null, 0.19)])
    expect([...moves]).toEqual([['scab', { from: 0.5, up: true }], ['rust', { from: 0.3, up: false }]])
  })

  it('takes a cause that was not there before as come from nothing', () => {
    expect(shareMoves([], [likely('scab', 0.5)]).get('scab')).toEqual({ from: 0, up: true })
  })
})

function likely(problem: string | null, probability: number): LikelyLine {
  return { problem, name: problem ?? '', what: '', probability, for: [], against: [] }
}
