import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openStore, runDuty, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from './test-store.js'

const NOON = new Date('2026-05-14T12:00:00.000Z')
const HOUR = 60 * 60_000

let home: string
let stores: Store[]

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-duties-'))
  const settings = await testStore(home)
  // As three processes have it: each opens the store by itself.
  stores = [await openStore(settings), await openStore(settings), await openStore(settings)]
})

afterEach(async () => {
  for (const store of stores) await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

/** Runs a duty on every store at once and counts how often its work was done. */
async function everywhere(everyMs: number, now: Date, work: () => Promise<void> = () => Promise.resolve()): Promise<number> {
  const done = await Promise.all(stores.map((store) => runDuty(store, { name: 'erase', everyMs }, now, work)))
  return done.filter((one) => one).length
}

describe('a duty', () => {
  it('is done by one of several processes that come to it at once', async () => {
    let working = 0
    let mostAtOnce = 0
    const times = await everywhere(HOUR, NOON, async () => {
      mostAtOnce = Math.max(mostAtOnce, ++working)
      await new Promise((resolve) => setTimeout(resolve, 100))
      working--
    })
    expect([times, mostAtOnce]).toEqual([1, 1])
  })

  it('is done again only when its time has passed', async () => {
    expect(await everywhere(HOUR, NOON)).toBe(1)
    expect(await everywhere(HOUR, new Date(NOON.getTime() + HOUR - 1))).toBe(0)
    expect(await everywhere(HOUR, new Date(NOON.getTime() + HOUR))).toBe(1)
  })

  it('leaves duties of other names alone', async () => {
    const [one, two] = stores as [Store, Store, Store]
    let inner = false
    await runDuty(one, { name: 'erase', everyMs: 0 }, NOON, async () => {
      inner = await runDuty(two, { name: 'send mail', everyMs: 0 }, NOON, () => Promise.resolve())
      expect(await runDuty(two, { name: 'erase', everyMs: 0 }, NOON, () => Promise.resolve())).toBe(false)
    })
    expect(inner).toBe(true)
  })

  it('gives its fault to the caller, and can be done by another at its next time', async () => {
    const [one, two] = stores as [Store, Store, Store]
    const fails = () => Promise.reject(new Error('the disk is full'))
    await expect(runDuty(one, { name: 'erase', everyMs: HOUR }, NOON, fails)).rejects.toThrow('the disk is full')
    const next = new Date(NOON.getTime() + HOUR)
    expect(await runDuty(two, { name: 'erase', everyMs: HOUR }, next, () => Promise.resolve())).toBe(true)
  })

  it('is taken over from a process that died at it, once its lease has run out', async ({ skip }) => {
    const [one, two] = stores as [Store, Store, Store]
    if (one.name === 'PostgreSQL') skip('the lock ends with the connection')
    const holdUntil = (at: Date) => one.db.updateTable('duty').set({ holder: 'dead', held_until: at.toISOString() }).execute()
    await runDuty(one, { name: 'erase', everyMs: 0 }, NOON, () => Promise.resolve())
    await holdUntil(new Date(Date.now() + HOUR))
    expect(await runDuty(two, { name: 'erase', everyMs: 0 }, NOON, () => Promise.resolve())).toBe(false)
    await holdUntil(new Date(Date.now() - 1))
    expect(await runDuty(two, { name: 'erase', everyMs: 0 }, NOON, () => Promise.resolve())).toBe(true)
  })
})
