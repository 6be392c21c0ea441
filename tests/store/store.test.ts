import { execFile } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import Database from 'better-sqlite3'
import { Migrator, sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  advanceCase, appendCaseChange, caseByLink, caseChangeAt, caseChanges, insertCase, insertTicket,
  openStore, signInAttempt, STORE_FILE, type Store, takeTicket, ticketsInNeed,
} from '../../src/store/index.js'
import { migrationsFor } from '../../src/store/migrations/index.js'
import { sqliteColumns } from '../../src/store/sqlite.js'

const AT = '2026-05-14T12:00:00.000Z'

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

const caseRow = (link: string) => ({
  link, revision: 0, evidence: '{}', words: '[]', asked_on: '2026-05-14', district: null, matched: '{}', opened_at: AT,
  call_of: null, call_closed_at: null, guide_hash: 'none',
})

const ticketRow = (caseId: number, urgent: 0 | 1, openedAt: string) => ({
  case_id: caseId, state: 'waiting', urgent, why: '', opened_at: openedAt, taken_by: null, taken_at: null,
  settled_at: null, reply: null, note: null,
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

  it('keeps what was written when the file is opened again', async () => {
    await insertCase(store.db, caseRow('one'))
    await store.close()
    store = await openStore({ home })
    expect(await caseByLink(store.db, 'one')).toMatchObject({ link: 'one', revision: 0, opened_at: AT })
  })

  it('goes down to nothing and up again', async () => {
    const migrator = new Migrator({
      db: store.db, provider: { getMigrations: () => Promise.resolve(migrationsFor(sqliteColumns)) },
    })
    const down = await migrator.migrateDown()
    expect(down.error).toBeUndefined()
    expect((await store.db.introspection.getTables()).map(({ name }) => name)).toEqual([])
    expect((await migrator.migrateToLatest()).error).toBeUndefined()
    expect(await caseByLink(store.db, 'one')).toBeUndefined()
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

describe('SQLite: cases', () => {
  it('refuses a second case with the same link', async () => {
    await insertCase(store.db, caseRow('one'))
    await expect(insertCase(store.db, caseRow('one'))).rejects.toThrow(/UNIQUE/)
  })

  it('advances a case only from the revision it is at', async () => {
    const id = await insertCase(store.db, caseRow('one'))
    const advance = { evidence: '{"a":1}', words: '[]', matched: '{}', guide_hash: 'x' }
    expect(await advanceCase(store.db, id, 0, advance)).toBe(true)
    expect(await advanceCase(store.db, id, 0, { ...advance, evidence: '{"b":2}' })).toBe(false)
    expect(await caseByLink(store.db, 'one')).toMatchObject({ revision: 1, evidence: '{"a":1}' })
  })

  it('keeps one change a revision, in order', async () => {
    const id = await insertCase(store.db, caseRow('one'))
    const change = (revision: number, kind: string) => (
      { case_id: id, revision, kind, content: '{}', person_id: null, at: AT })
    await appendCaseChange(store.db, change(1, 'note'))
    await appendCaseChange(store.db, change(0, 'opened'))
    await expect(appendCaseChange(store.db, change(1, 'answer'))).rejects.toThrow(/UNIQUE/)
    expect((await caseChanges(store.db, id)).map(({ kind }) => kind)).toEqual(['opened', 'note'])
    expect((await caseChanges(store.db, id, 'note')).map(({ revision }) => revision)).toEqual([1])
    expect(await caseChangeAt(store.db, id, 2)).toBeUndefined()
  })

  it('refuses a change of a case that does not exist', async () => {
    await expect(appendCaseChange(store.db, {
      case_id: 99, revision: 0, kind: 'opened', content: '{}', person_id: null, at: AT,
    })).rejects.toThrow(/FOREIGN KEY/)
  })

  it.each([
    `'); drop table case_file; --`, `" or "1"="1`, `one' or '1'='1`, '%', '\\', '🌱 naïve “quotes”',
  ])('keeps and finds %s as the text it is', async (text) => {
    await insertCase(store.db, caseRow(text))
    expect((await caseByLink(store.db, text))?.link).toBe(text)
    expect(await caseByLink(store.db, 'one')).toBeUndefined()
  })
})

describe('SQLite: tickets', () => {
  const ticketOf = async (link: string, urgent: 0 | 1, openedAt: string) => (
    insertTicket(store.db, ticketRow(await insertCase(store.db, caseRow(link)), urgent, openedAt)))

  it('refuses a second ticket for a case', async () => {
    const caseId = await insertCase(store.db, caseRow('one'))
    await insertTicket(store.db, ticketRow(caseId, 0, AT))
    await expect(insertTicket(store.db, ticketRow(caseId, 0, AT))).rejects.toThrow(/UNIQUE/)
  })

  it('lists urgent ones first and then the oldest', async () => {
    const late = await ticketOf('late', 0, '2026-05-14T12:00:00.000Z')
    const early = await ticketOf('early', 0, '2026-05-13T12:00:00.000Z')
    const urgent = await ticketOf('urgent', 1, '2026-05-14T13:00:00.000Z')
    expect((await ticketsInNeed(store.db, 'waiting', 10)).map(({ id }) => id)).toEqual([urgent, early, late])
    expect((await ticketsInNeed(store.db, 'waiting', 1)).map(({ id }) => id)).toEqual([urgent])
  })

  it('does not give a ticket to a person who does not exist', async () => {
    const ticket = await ticketOf('one', 0, AT)
    await expect(takeTicket(store.db, ticket, 99, AT)).rejects.toThrow(/FOREIGN KEY/)
  })
})

describe('SQLite: two processes on one file', () => {
  it('lets both write and loses nothing', async () => {
    const count = () => promisify(execFile)(
      process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'counting-process.ts'), home, '15'])
    await Promise.all([count(), count()])
    expect((await signInAttempt(store.db, 'key'))?.failures).toBe(30)
  })

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
