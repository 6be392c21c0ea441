import { afterEach, describe, expect, it, vi } from 'vitest'
import { MOST_PRACTISED, PracticeDone } from '../../shared/index.js'
import { practisedBefore } from '../../src/web/sheet/practised.js'

const kept = (names: unknown): void => {
  vi.stubGlobal('localStorage', { getItem: () => JSON.stringify(names), setItem: () => undefined })
}

describe('the worked cases practised in this browser', () => {
  afterEach(() => { vi.unstubAllGlobals() })

  it('are sent whole, in the order in which they were done', () => {
    kept(['lettuce-001', 'apple-002'])
    expect(practisedBefore()).toEqual(['lettuce-001', 'apple-002'])
  })

  it('lose those longest ago where there are more than the service takes', () => {
    const names = Array.from({ length: MOST_PRACTISED + 2 }, (_, number) => `case-${number}`)
    kept(names)
    expect(practisedBefore()).toEqual(names.slice(2))
    expect(PracticeDone.safeParse({ done: practisedBefore() }).success).toBe(true)
    expect(PracticeDone.safeParse({ done: names }).success).toBe(false)
  })

  it('are none where an older page kept something else', () => {
    kept({ done: 3 })
    expect(practisedBefore()).toEqual([])
  })
})
