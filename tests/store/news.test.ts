import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { announce, type News, openStore, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from './test-store.js'

let home: string
let store: Store
let other: Store

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-news-'))
  store = await openStore(await testStore(home))
  other = await openStore(await testStore(home))
})

afterEach(async () => {
  await store.close()
  await other.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const news = (ticket: number): News => ({ ticket, what: 'taken', person: 7 })
const ANYTHING: News = { ticket: null, what: 'anything', person: null }

/** What a store hears from now on, once it hears. */
async function hearing(from: Store): Promise<News[]> {
  const heard: News[] = []
  from.listen((piece) => heard.push(piece))
  // On PostgreSQL, listening begins with a connection, and that itself says that anything may have changed.
  if (from.name === 'PostgreSQL') await expect.poll(() => heard.splice(0), { timeout: 10_000 }).toEqual([ANYTHING])
  return heard
}

describe('news', () => {
  it('is heard when its transaction is committed, not before, and never when it is undone', async () => {
    const heard = await hearing(store)
    await store.db.transaction().execute(async (trx) => {
      await announce(trx, news(1))
      await announce(trx, news(2))
      await new Promise((resolve) => setTimeout(resolve, 50))
      expect(heard).toEqual([])
    })
    await expect(store.db.transaction().execute(async (trx) => {
      await announce(trx, news(3))
      throw new Error('undone')
    })).rejects.toThrow('undone')
    await announce(store.db, news(4))
    await expect.poll(() => heard).toEqual([news(1), news(2), news(4)])
  })

  it('is heard no more once listening has ended', async () => {
    const heard: number[] = []
    const stop = store.listen(({ ticket }) => { if (ticket !== null) heard.push(ticket) })
    const all = await hearing(store).catch(() => [])
    await announce(store.db, news(1))
    await expect.poll(() => heard).toEqual([1])
    stop()
    await announce(store.db, news(2))
    await expect.poll(() => all.map(({ ticket }) => ticket)).toContain(2)
    expect(heard).toEqual([1])
  })

  it('reaches the other processes on the same store', async () => {
    const heard = await hearing(other)
    await store.db.transaction().execute(async (trx) => {
      await trx.insertInto('duty').values({ name: 'any', begun_at: null, holder: null, held_until: null }).execute()
      await announce(trx, news(5))
    })
    // SQLite says only that another process wrote.
    await expect.poll(() => heard, { timeout: 10_000 }).toEqual(store.name === 'SQLite' ? [ANYTHING] : [news(5)])
  })

  it('that cannot be read is anything', async () => {
    const heard = await hearing(store)
    await sql`select pg_notify('frondline_news', 'green')`.execute(store.db)
    await expect.poll(() => heard).toEqual([ANYTHING])
  })

  it('goes on after the connection was lost, and says that anything may have changed', async ({ skip }) => {
    if (store.name === 'SQLite') skip('a file has no connection to lose')
    const heard = await hearing(other)
    await sql`select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and query like 'listen %'`.execute(store.db)
    await expect.poll(() => heard, { timeout: 10_000 }).toEqual([ANYTHING])
    await announce(store.db, news(6))
    await expect.poll(() => heard, { timeout: 10_000 }).toEqual([ANYTHING, news(6)])
  })
})
