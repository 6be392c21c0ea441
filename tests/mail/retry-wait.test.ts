import { describe, expect, it } from 'vitest'
import { GIVE_UP_MS, retryWaitMs } from '../../src/mail/retry-wait.js'

describe('how long to wait before a letter is tried again', () => {
  it('doubles from half a minute up to four hours', () => {
    expect([1, 2, 3, 4, 10, 30, 2000].map((tries) => retryWaitMs(tries, 0.5) / 60_000)).toEqual([0.5, 1, 2, 4, 240, 240, 240])
  })

  it('differs by a quarter more or less, by chance', () => {
    expect([retryWaitMs(2, 0), retryWaitMs(2, 1)]).toEqual([45_000, 75_000])
  })

  // RFC 5321, section 4.5.4.1: the give-up time "generally needs to be at least 4-5 days"; read from memory.
  it('goes on for four days', () => {
    expect(GIVE_UP_MS).toBe(4 * 24 * 3_600_000)
  })
})
