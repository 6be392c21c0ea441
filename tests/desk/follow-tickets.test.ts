import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { LiveChange } from '../../shared/index.js'
import { followTickets } from '../../src/desk/tickets/follow.js'
import type { News } from '../../src/store/index.js'
import { openWorld, type World } from './desk-world.js'

let world: World
beforeEach(async () => { world = await openWorld() })
afterEach(() => world.close())

describe('desk: following tickets', () => {
  it('goes on for everybody when one of those told throws, and says so', async () => {
    const reported: string[] = []
    const heard: LiveChange[] = []
    let tell: (news: News) => void = () => undefined
    const follow = followTickets(world.store.db, (hear) => {
      tell = hear
      return () => undefined
    }, (fault, what) => { reported.push(`${what}: ${String(fault)}`) })
    follow(() => { throw new Error('its browser is gone') })
    const stop = follow((change) => { heard.push(change) })

    tell({ ticket: 1, what: 'taken', person: null })
    tell({ ticket: 2, what: 'settled', person: null })
    await expect.poll(() => heard).toEqual([{ ticket: '1', kind: 'taken', by: null }, { ticket: '2', kind: 'settled', by: null }])
    expect(reported).toEqual(Array.from({ length: 2 }, () => 'somebody could not be told of a change: Error: its browser is gone'))

    stop()
    tell({ ticket: 3, what: 'taken', person: null })
    await expect.poll(() => reported).toHaveLength(3)
    expect(heard).toHaveLength(2)
  })
})
