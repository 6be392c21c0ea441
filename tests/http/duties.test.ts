import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pino } from 'pino'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keepDuties } from '../../src/http/duties.js'
import { dutiesOf } from '../../src/http/duty-list.js'
import { openStore, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from '../store/test-store.js'

let home: string
let store: Store
let logged: string[]

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-timers-'))
  store = await openStore(await testStore(home))
  logged = []
})

afterEach(async () => {
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const log = () => pino({ level: 'trace' }, { write: (line: string) => void logged.push(line) })

describe('the duties of the service', () => {
  it('keep a letter no longer because pictures cannot be swept', async () => {
    const done: string[] = []
    const duties = dutiesOf({
      eraseDueContacts: () => Promise.resolve(done.push('contacts')), forgetOldMail: async () => { done.push('mail') },
      sweepPictures: () => Promise.reject(new Error('the bucket does not answer')), pullWeather: () => Promise.resolve(),
    }, null)
    await Promise.allSettled(duties.map((duty) => duty.run()))
    expect(done.sort()).toEqual(['contacts', 'mail'])
    expect(new Set(duties.map(({ name }) => name)).size).toBe(duties.length)
  })
})

describe('keeping duties', () => {
  it('does each again and again, logs what fails, and goes on', async () => {
    const done = { well: 0, badly: 0 }
    const stop = keepDuties([
      { name: 'well', everyMs: 60, run: () => { done.well++; return Promise.resolve() } },
      { name: 'badly', everyMs: 60, run: () => { done.badly++; return Promise.reject(new Error('no')) } },
    ], store, () => new Date(), log())
    await expect.poll(() => Math.min(done.well, done.badly), { timeout: 10_000 }).toBeGreaterThanOrEqual(2)
    await stop()
    expect(logged.length).toBeGreaterThanOrEqual(2)
    expect(logged.every((line) => line.includes('a duty could not be done') && line.includes('badly'))).toBe(true)
  })

  it('does not wait for one that does not come to its end', async () => {
    let isBegun = false
    const stop = keepDuties([{ name: 'stuck', everyMs: 50, async run() {
      isBegun = true
      await new Promise((resolve) => setTimeout(resolve, 4000))
    } }], store, () => new Date(), log(), 100)
    await expect.poll(() => isBegun, { timeout: 10_000 }).toBe(true)
    const begun = performance.now()
    await stop()
    expect(performance.now() - begun).toBeLessThan(3000)
  })

  it('waits for what is under way when it is stopped', async () => {
    let isDone = false
    let isBegun = false
    const stop = keepDuties([{ name: 'slow', everyMs: 50, async run() {
      isBegun = true
      await new Promise((resolve) => setTimeout(resolve, 300))
      isDone = true
    } }], store, () => new Date(), log())
    await expect.poll(() => isBegun, { timeout: 10_000 }).toBe(true)
    await stop()
    expect(isDone).toBe(true)
  })
})
