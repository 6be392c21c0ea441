import { describe, expect, it } from 'vitest'
import { countsAs } from '../../../src/season/index.js'

const concluded = { problem: 'rose-black-spot', probability: 0.8 }
const plain = { isPractice: false, isMerged: false, settledAs: undefined, concluded }

describe('what a case counts for', () => {
  it('is its probability when it was concluded', () => {
    expect(countsAs(plain)).toEqual({ problem: 'rose-black-spot', basis: 'concluded', weight: 0.8 })
  })

  it('is one when a specialist settled it, and only as what they settled it', () => {
    expect(countsAs({ ...plain, settledAs: 'rose-rust' })).toEqual({ problem: 'rose-rust', basis: 'settled', weight: 1 })
    expect(countsAs({ ...plain, settledAs: null })).toBeNull()
  })

  it('is nothing when nothing was concluded, it was practised, or another ticket speaks for it', () => {
    expect(countsAs({ ...plain, concluded: null })).toBeNull()
    expect(countsAs({ ...plain, isPractice: true })).toBeNull()
    expect(countsAs({ ...plain, isMerged: true, settledAs: 'rose-rust' })).toBeNull()
  })
})
