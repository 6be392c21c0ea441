import { describe, expect, it } from 'vitest'
import { newestFirst } from '../../src/web/wire/newest-first.js'

describe('replies that come back in another order', () => {
  it('are drawn as long as no later one was', () => {
    const order = newestFirst()
    const first = order.ask()
    const second = order.ask()
    expect(first()).toBe(true)
    expect(second()).toBe(true)
  })

  it('never draw over a later one', () => {
    const order = newestFirst()
    const slow = order.ask()
    const quick = order.ask()
    expect(quick()).toBe(true)
    expect(slow()).toBe(false)
    expect(order.ask()()).toBe(true)
  })

  it('are old once a change of one’s own was made', () => {
    const order = newestFirst()
    const look = order.ask()
    order.overtake()
    expect(look()).toBe(false)
    expect(order.ask()()).toBe(true)
  })
})
