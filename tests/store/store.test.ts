import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Kysely, Migrator, NO_MIGRATIONS } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  advanceCase, advanceTicket, appendCaseChange, caseByLink, caseChanges, countPeople, insertCase, insertPerson,
  insertTicket, keepSignInAttempt, openStore, peopleNow, searchTickets, signInAttempt, STORE_FILE, type Store,
} from '../../src/store/index.js'
import { migrationsFor } from '../../src/store/migrations/index.js'
import { postgresColumns, postgresDialect } from '../../src/store/postgres.js'
import { openSqliteFile, sqliteColumns, sqliteDialect } from '../../src/store/sqlite.js'
import { dropTestStore, testStore } from './test-store.js'

const AT = '2026-05-14T12:00:00.000Z'

let home: string
let store: Store

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-store-'))
  store = await openStore(await testStore(home))
})

afterEach(async () => {
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const caseRow = (link: string) => ({
  link, revision: 0, evidence: '{}', words: '[]', asked_on: '2026-05-14', district: null, matched: '{}', opened_at: AT,
  call_of: null, call_closed_at: null, guide_hash: 'none', practice: null,
})

const ticketRow = (caseId: number, urgent: 0 | 1 | 2, openedAt: string) => ({
  case_id: caseId, state: 'waiting', urgent, why: '', opened_at: openedAt, taken_by: null, taken_at: null,
  settled_at: null, reply: null, note: null, merged_into: null, waits_since: openedAt,
})

describe('the store: opening', () => {
  it('keeps what was written when it is opened again', async () => {
    await insertCase(store.db, caseRow('one'))
    await store.close()
    store = await openStore(await testStore(home))
    expect(await caseByLink(store.db, 'one')).toMatchObject({ link: 'one', revision: 0, opened_at: AT })
  })

  it('goes down to nothing and up again', async () => {
    // Without the retrying of transactions, as when the store is opened.
    const db = new Kysely({ dialect: store.name === 'SQLite' ? sqliteDialect(openSqliteFile(join(home, STORE_FILE))) : postgresDialect({
      url: (await testStore(home)).databaseUrl ?? '', connections: 2, onLost: () => undefined,
    }) })
    const migrator = new Migrator({ db, provider: {
      getMigrations: () => Promise.resolve(migrationsFor(store.name === 'SQLite' ? sqliteColumns : postgresColumns)),
    } })
    expect((await migrator.migrateTo(NO_MIGRATIONS)).error).toBeUndefined()
    expect((await db.introspection.getTables()).map(({ name }) => name)).toEqual([])
    expect((await migrator.migrateToLatest()).error).toBeUndefined()
    await db.destroy()
    expect(await caseByLink(store.db, 'one')).toBeUndefined()
  })
})

describe('the store: cases', () => {
  it('refuses a second case with the same link', async () => {
    await insertCase(store.db, caseRow('one'))
    await expect(insertCase(store.db, caseRow('one'))).rejects.toThrow(/UNIQUE|duplicate key/)
  })

  it('advances a case only from the revision it is at', async () => {
    const id = await insertCase(store.db, caseRow('one'))
    const advance = { evidence: '{"a":1}', words: '[]', matched: '{}', language: 'en', guide_hash: 'x' }
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
    await expect(appendCaseChange(store.db, change(1, 'answer'))).rejects.toThrow(/UNIQUE|duplicate key/)
    expect((await caseChanges(store.db, id)).map(({ kind }) => kind)).toEqual(['opened', 'note'])
    expect((await caseChanges(store.db, id, 'note')).map(({ revision }) => revision)).toEqual([1])
  })

  it('refuses a change of a case that does not exist', async () => {
    await expect(appendCaseChange(store.db, {
      case_id: 99, revision: 0, kind: 'opened', content: '{}', person_id: null, at: AT,
    })).rejects.toThrow(/FOREIGN KEY|foreign key/)
  })

  it.each([
    `'); drop table case_file; --`, `" or "1"="1`, `one' or '1'='1`, '%', '\\', '🌱 naïve “quotes”',
  ])('keeps and finds %s as the text it is', async (text) => {
    await insertCase(store.db, caseRow(text))
    expect((await caseByLink(store.db, text))?.link).toBe(text)
    expect(await caseByLink(store.db, 'one')).toBeUndefined()
  })
})

describe('the store: tickets', () => {
  const ticketOf = async (link: string, urgent: 0 | 1 | 2, openedAt: string) => (
    insertTicket(store.db, ticketRow(await insertCase(store.db, caseRow(link)), urgent, openedAt)))

  it('refuses a second ticket for a case', async () => {
    const caseId = await insertCase(store.db, caseRow('one'))
    await insertTicket(store.db, ticketRow(caseId, 0, AT))
    await expect(insertTicket(store.db, ticketRow(caseId, 0, AT))).rejects.toThrow(/UNIQUE|duplicate key/)
  })

  it('lists the most urgent ones first and then the oldest, and the open ones before those that are settled', async () => {
    const late = await ticketOf('late', 0, '2026-05-14T12:00:00.000Z')
    const early = await ticketOf('early', 0, '2026-05-13T12:00:00.000Z')
    const urgent = await ticketOf('urgent', 1, '2026-05-14T13:00:00.000Z')
    const found = async (most: number) => (await searchTickets(store.db, { states: ['waiting', 'settled'], words: [], byNeed: true, most })).map(({ id }) => id)
    const flagged = await ticketOf('flagged', 2, '2026-05-14T14:00:00.000Z')
    const over = await ticketOf('over', 2, '2026-05-12T12:00:00.000Z')
    expect(await found(10)).toEqual([over, flagged, urgent, early, late])
    await advanceTicket(store.db, over, 0, { state: 'settled', settled_at: AT })
    expect(await found(10)).toEqual([flagged, urgent, early, late, over])
    expect(await found(1)).toEqual([flagged])
  })

  it('does not give a ticket to a person who does not exist', async () => {
    const ticket = await ticketOf('one', 0, AT)
    await expect(advanceTicket(store.db, ticket, 0, { state: 'taken', taken_by: 99, taken_at: AT }))
      .rejects.toThrow(/FOREIGN KEY|foreign key/)
  })
})

describe('the store: people', () => {
  it('lists them in the order of the code points of their names, whatever the language of the machine', async () => {
    for (const name of ['sedge', 'Willow', 'alder', 'élan', 'Zinnia', '_reed']) {
      await insertPerson(store.db, { name, role: 'volunteer', password_hash: '', made_at: AT, removed_at: null })
    }
    expect((await peopleNow(store.db)).map(({ name }) => name)).toEqual(['Willow', 'Zinnia', '_reed', 'alder', 'sedge', 'élan'])
  })
})

describe('the store: the same meaning in every database', () => {
  it('gives counts and sums as numbers', async () => {
    await insertCase(store.db, caseRow('one'))
    const row = await store.db.selectFrom('case_file')
      .select((eb) => [eb.fn.countAll().as('count'), eb.fn.sum('id').as('sum'), eb.fn.max('id').as('max')])
      .executeTakeFirstOrThrow()
    expect(row).toEqual({ count: 1, sum: 1, max: 1 })
  })

  it('takes capitals as they are when it searches for part of a text', async () => {
    await insertCase(store.db, { ...caseRow('one'), words: 'Lettuce' })
    const found = (pattern: string) => store.db.selectFrom('case_file').select('link').where('words', 'like', pattern).execute()
    expect(await found('%ettuce')).toHaveLength(1)
    expect(await found('%lettuce')).toHaveLength(0)
  })

  it('undoes a whole transaction when its work throws', async () => {
    await expect(store.db.transaction().execute(async (trx) => {
      await insertCase(trx, caseRow('one'))
      throw new Error('no')
    })).rejects.toThrow('no')
    expect(await caseByLink(store.db, 'one')).toBeUndefined()
  })

  it('loses nothing when twenty transactions read a row and write what they read plus one', async () => {
    await Promise.all(Array.from({ length: 20 }, () => store.db.transaction().execute(async (trx) => {
      const failures = (await signInAttempt(trx, 'key'))?.failures ?? 0
      await keepSignInAttempt(trx, { attempt_key: 'key', failures: failures + 1, last_at: AT, blocked_until: null })
    })))
    expect((await signInAttempt(store.db, 'key'))?.failures).toBe(20)
  })

  it('lets only one of two transactions go by what both have read and neither has changed', async () => {
    // Each adds a person only while there is none: with snapshots alone, both would.
    const addFirst = (name: string) => store.db.transaction().execute(async (trx) => {
      if (await countPeople(trx) > 0) return
      await new Promise((resolve) => setTimeout(resolve, 20))
      await insertPerson(trx, { name, role: 'volunteer', password_hash: '', made_at: AT, removed_at: null })
    })
    await Promise.all([addFirst('sedge'), addFirst('willow')])
    expect(await countPeople(store.db)).toBe(1)
  })
})
