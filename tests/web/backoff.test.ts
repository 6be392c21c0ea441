import { describe, expect, it } from 'vitest'
import { waitBeforeAttempt } from '../../src/web/wire/backoff.js'

describe('the wait before another try', () => {
  it('doubles from two seconds and stops growing at a minute', () => {
    expect([1, 2, 3, 4, 5, 6, 7, 30].map(attempt => waitBeforeAttempt(attempt, 0.5))).toEqual([2000, 4000, 8000, 16000, 32000, 60000, 60000, 60000])
  })

  it('is spread by a quarter either way', () => {
    expect(waitBeforeAttempt(1, 0)).toBe(1500)
    expect(waitBeforeAttempt(1, 1)).toBe(2500)
  })
})
