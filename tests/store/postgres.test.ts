import { execFile } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { hasStore, insertCase, openStore, signInAttempt, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from './test-store.js'

let home: string
let url: string
let store: Store

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-store-'))
  const settings = await testStore(home)
  url = settings.databaseUrl ?? ''
  store = await openStore(settings)
})

afterEach(async () => {
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const show = async (setting: string): Promise<unknown> => {
  const { rows } = await sql.raw<Record<string, unknown>>(`show ${setting}`).execute(store.db)
  return Object.values(rows[0] ?? {})[0]
}

describe('PostgreSQL: opening the store', () => {
  it('is told apart from a database that has no store', async () => {
    const empty = new URL(url)
    empty.pathname = '/postgres'
    expect(await hasStore({ home, databaseUrl: empty.href })).toBe(false)
    expect(await hasStore({ home, databaseUrl: url })).toBe(true)
    await expect(hasStore({ home, databaseUrl: 'postgres://frondline@127.0.0.1:1/helpline' })).rejects.toThrow('127.0.0.1:1')
  })

  it('waits for the disk at every commit and leaves no transaction open for ever', async () => {
    expect(await show('synchronous_commit')).toBe('on')
    expect(await show('idle_in_transaction_session_timeout')).toBe('1min')
    expect(await show('statement_timeout')).toBe('30s')
  })

  it('makes every transaction serialisable', async () => {
    const level = await store.db.transaction().execute(async (trx) => (
      (await sql<{ transaction_isolation: string }>`show transaction_isolation`.execute(trx)).rows[0]?.transaction_isolation))
    expect(level).toBe('serializable')
  })

  it('brings an empty database up to date once when four processes open it together', async () => {
    await store.close()
    const emptying = await openStore({ home, databaseUrl: url })
    await sql.raw('drop schema public cascade').execute(emptying.db)
    await sql.raw('create schema public').execute(emptying.db)
    await emptying.close()
    const opened = await Promise.all(Array.from({ length: 4 }, () => openStore({ home, databaseUrl: url, connections: 1 })))
    store = await openStore({ home, databaseUrl: url })
    expect(await signInAttempt(store.db, 'key')).toBeUndefined()
    for (const one of opened) await one.close()
  })

  it('goes on after the server has ended its connections', async () => {
    const lost: string[] = []
    const other = await openStore({ home, databaseUrl: url, onLost: (fault) => lost.push(fault.message) })
    expect(await signInAttempt(other.db, 'key')).toBeUndefined()
    await sql`select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()`.execute(store.db)
    await expect.poll(() => lost).toEqual(['terminating connection due to administrator command'])
    expect(await signInAttempt(other.db, 'key')).toBeUndefined()
    await other.close()
  })

  it('says in the fault when the server cannot be reached', async () => {
    await expect(openStore({ home, databaseUrl: 'postgres://nobody@127.0.0.1:1/none' })).rejects.toThrow(/ECONNREFUSED/)
  })
})

describe('PostgreSQL: several processes on one database', () => {
  it('lets both write and loses nothing', async () => {
    const count = () => promisify(execFile)(
      process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'counting-process.ts'), home, '15'],
      { env: { ...process.env, DATABASE_URL: url } })
    await Promise.all([count(), count()])
    expect((await signInAttempt(store.db, 'key'))?.failures).toBe(30)
  }, 60_000)

  it('gives each of two who claim rows at once rows of their own', async () => {
    const row = (link: string) => ({
      link, revision: 0, evidence: '{}', words: '[]', asked_on: '2026-05-14', district: null, matched: '{}',
      opened_at: '2026-05-14T12:00:00.000Z', call_of: null, call_closed_at: null, guide_hash: 'none', practice: null,
    })
    for (const link of ['a', 'b']) await insertCase(store.db, row(link))
    const claim = (go: Promise<void>) => store.db.transaction().execute(async (trx) => {
      const claimed = await trx.selectFrom('case_file').select('link').orderBy('id').limit(1).forUpdate().skipLocked().execute()
      await go
      return claimed.map(({ link }) => link)
    })
    let let1go: () => void = () => undefined
    const first = claim(new Promise((resolve) => { let1go = resolve }))
    await expect.poll(async () => (await claim(Promise.resolve()))[0]).toBe('b')
    let1go()
    expect(await first).toEqual(['a'])
  })
})
