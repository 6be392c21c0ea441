import { execFile } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import Database from 'better-sqlite3'
import { sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { caseByLink, hasStore, openStore, signInAttempt, STORE_FILE, type Store } from '../../src/store/index.js'

let home: string
let store: Store

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-store-'))
  store = await openStore({ home })
})

afterEach(async () => {
  await store.close()
  await rm(home, { recursive: true, force: true })
})

const pragma = async (name: string): Promise<unknown> => {
  const { rows } = await sql.raw<Record<string, unknown>>(`pragma ${name}`).execute(store.db)
  return Object.values(rows[0] ?? {})[0]
}

describe('SQLite: opening the store', () => {
  it('writes ahead, flushes every commit, keeps references whole and waits for other writers', async () => {
    expect(await pragma('journal_mode')).toBe('wal')
    expect(await pragma('synchronous')).toBe(2)
    expect(await pragma('foreign_keys')).toBe(1)
    expect(await pragma('busy_timeout')).toBe(5000)
  })

  it('makes the folder when it is not there', async () => {
    const deeper = await openStore({ home: join(home, 'a', 'b') })
    expect(await caseByLink(deeper.db, 'none')).toBeUndefined()
    await deeper.close()
  })

  it('is told apart from a folder that has none, and looking makes none', async () => {
    const elsewhere = await mkdtemp(join(tmpdir(), 'frondline-none-'))
    expect(await hasStore({ home: elsewhere })).toBe(false)
    expect(await readdir(elsewhere)).toEqual([])
    expect(await hasStore({ home })).toBe(true)
    await rm(elsewhere, { recursive: true })
  })

  it('says which migration failed when the tables are not its own', async () => {
    await store.close()
    await rm(join(home, STORE_FILE))
    const foreign = new Database(join(home, STORE_FILE))
    foreign.exec('create table ticket (leaf text)')
    foreign.close()
    await expect(openStore({ home })).rejects.toThrow(
      'The store could not be brought up to date: migration "0001-first-tables" failed.')
    const left = new Database(join(home, STORE_FILE), { readonly: true })
    expect(left.prepare('select name from sqlite_master where name = ?').get('person')).toBeUndefined()
    left.close()
    await rm(join(home, STORE_FILE))
    store = await openStore({ home })
  })
})

describe('SQLite: two processes on one file', () => {
  it('lets both write and loses nothing', async () => {
    const count = () => promisify(execFile)(
      process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'counting-process.ts'), home, '15'])
    await Promise.all([count(), count()])
    expect((await signInAttempt(store.db, 'key'))?.failures).toBe(30)
  }, 60_000)

  it('takes the write lock when a transaction begins, so that a second writer cannot slip between', async () => {
    const file = new Database(join(home, STORE_FILE), { timeout: 0 })
    await store.db.transaction().execute(async (trx) => {
      await signInAttempt(trx, 'key')
      expect(() => file.exec('begin immediate')).toThrow(/locked/)
    })
    file.exec('begin immediate')
    file.exec('rollback')
    file.close()
  })
})
