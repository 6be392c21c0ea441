import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { claimAttempt, clearAttempt, FREE_FAILURES, waitAfter } from '../../src/desk/people/throttle.js'
import { openWorld, type World } from './desk-world.js'

describe('the wait after failed sign-ins', () => {
  it('is none before the fifth failure, then grows, and never passes 15 minutes', () => {
    expect([0, 1, 2, 3, 4].map(waitAfter)).toEqual([0, 0, 0, 0, 0])
    expect([5, 6, 7, 8, 9, 10].map((failures) => waitAfter(failures) / 1000)).toEqual([15, 30, 60, 120, 240, 480])
    expect([11, 12, 50, 100_000].map((failures) => waitAfter(failures) / 60_000)).toEqual([15, 15, 15, 15])
  })
})

describe('counting sign-ins', () => {
  let world: World
  beforeEach(async () => {
    world = await openWorld()
  })
  afterEach(() => world.close())

  const claim = (name: string, address: string) => claimAttempt(world.store.db, { name, address }, world.now)
  const later = (seconds: number) => {
    world.now = new Date(world.now.getTime() + seconds * 1000)
  }

  it('makes a name wait after five failures, wherever they come from', async () => {
    for (let turn = 0; turn < FREE_FAILURES; turn++) expect(await claim('sedge', `address ${turn}`)).toBe(0)
    expect(await claim('sedge', 'address 9')).toBe(15_000)
    expect(await claim('willow', 'address 9')).toBe(0)
  })

  it('makes an address wait after five failures, whatever the names', async () => {
    for (let turn = 0; turn < FREE_FAILURES; turn++) expect(await claim(`name ${turn}`, 'one address')).toBe(0)
    expect(await claim('sedge', 'one address')).toBe(15_000)
    expect(await claim('sedge', 'another')).toBe(0)
  })

  it('does not count while it makes wait, and doubles the wait at the next failure', async () => {
    for (let turn = 0; turn < FREE_FAILURES; turn++) await claim('sedge', 'a')
    for (let turn = 0; turn < 10; turn++) expect(await claim('sedge', 'a')).toBe(15_000)
    later(15)
    expect(await claim('sedge', 'a')).toBe(0)
    expect(await claim('sedge', 'a')).toBe(30_000)
  })

  it('lets through five of fifty that come at once', async () => {
    const waits = await Promise.all(Array.from({ length: 50 }, () => claim('sedge', 'a')))
    expect(waits.filter((wait) => wait === 0)).toHaveLength(FREE_FAILURES)
  })

  it('starts a name again after a success, but not the address', async () => {
    for (let turn = 0; turn < 4; turn++) await claim('willow', 'a')
    expect(await claim('sedge', 'a')).toBe(0)
    await clearAttempt(world.store.db, { name: 'sedge', address: 'a' }, world.now)
    expect(await claim('sedge', 'b')).toBe(0)
    expect(await claim('alder', 'a')).toBe(0)
    expect(await claim('alder', 'a')).toBe(15_000)
  })

  it('survives a restart, and forgets after a day', async () => {
    for (let turn = 0; turn < FREE_FAILURES; turn++) await claim('sedge', 'a')
    const { now } = world
    world = await world.reopen()
    world.now = now
    expect(await claim('sedge', 'a')).toBe(15_000)
    later(24 * 3600 + 1)
    for (let turn = 0; turn < FREE_FAILURES; turn++) expect(await claim('sedge', 'a')).toBe(0)
  })

  it('keeps neither names nor addresses in clear', async () => {
    await claim('sedge', '192.0.2.7')
    const rows = await world.store.db.selectFrom('sign_in_attempt').selectAll().execute()
    expect(rows).toHaveLength(2)
    expect(JSON.stringify(rows)).not.toMatch(/sedge|192/)
  })
})
