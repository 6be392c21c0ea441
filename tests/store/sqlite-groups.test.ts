import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type Database from 'better-sqlite3'
import { Kysely, sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Ending } from '../../src/store/group-commit.js'
import { openSqliteFile, sqliteDialect } from '../../src/store/sqlite.js'

interface LeafTables { leaf: { name: string } }

let folder: string
let database: Database.Database
let db: Kysely<LeafTables>
let other: Database.Database
let told: string[]

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'frondline-group-'))
  const file = join(folder, 'leaves.sqlite')
  database = openSqliteFile(file)
  told = []
  const ending: Ending = {
    done: () => told.push('done'), undone: () => told.push('undone'), committed: () => told.push('committed'), lost: () => told.push('lost'),
  }
  db = new Kysely<LeafTables>({ dialect: sqliteDialect(database, ending) })
  database.exec('create table leaf (name text not null unique)')
  other = openSqliteFile(file)
})

afterEach(async () => {
  await db.destroy()
  other.close()
  await rm(folder, { recursive: true, force: true })
})

const add = (name: string): Promise<void> => db.transaction().execute(async (trx) => {
  await trx.insertInto('leaf').values({ name }).execute()
})

/** What a loss of power now would leave: what another process reads. */
const onDisk = (): string[] => other.prepare<[], { name: string }>('select name from leaf order by name').all().map(({ name }) => name)

describe('transactions that come in together', () => {
  it('are flushed once, and each is on disk when it counts as kept', async () => {
    const names = ['a', 'b', 'c', 'd', 'e']
    await Promise.all(names.map(async (name) => {
      await add(name)
      expect(onDisk()).toContain(name)
    }))
    expect(onDisk()).toEqual(names)
    expect(told).toEqual([...names.map(() => 'done'), 'committed'])
  })

  it('see what the ones before them wrote, as if each had been committed', async () => {
    const counts = await Promise.all(['a', 'b', 'c'].map((name) => db.transaction().execute(async (trx) => {
      await trx.insertInto('leaf').values({ name }).execute()
      return (await trx.selectFrom('leaf').selectAll().execute()).length
    })))
    expect(counts).toEqual([1, 2, 3])
  })

  it('are undone one by one: what fails takes no other with it', async () => {
    const outcomes = await Promise.allSettled([add('a'), add('b'), add('a'), add('c')])
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled', 'rejected', 'fulfilled'])
    expect(onDisk()).toEqual(['a', 'b', 'c'])
    expect(told).toEqual(['done', 'done', 'undone', 'done', 'committed'])
  })

  it('let go of the file when the only one failed', async () => {
    await add('a')
    await expect(add('a')).rejects.toThrow('UNIQUE')
    other.exec('begin immediate')
    other.exec('rollback')
    expect(database.inTransaction).toBe(false)
  })

  it('are on disk before a statement outside of transactions is answered', async () => {
    const adding = add('a')
    const seen = await db.selectFrom('leaf').selectAll().execute().then((rows) => [rows.length, onDisk().length])
    expect(seen).toEqual([1, 1])
    await adding
  })

  it('are taken one after the other, also where one of them waits for something', async () => {
    const slow = db.transaction().execute(async (trx) => {
      await trx.insertInto('leaf').values({ name: 'a' }).execute()
      await new Promise((resolve) => setTimeout(resolve, 30))
      await trx.insertInto('leaf').values({ name: 'b' }).execute()
    })
    await Promise.all([slow, add('c'), db.selectFrom('leaf').selectAll().execute()])
    const { rows } = await sql<{ name: string }>`select name from leaf order by rowid`.execute(db)
    expect(rows.map(({ name }) => name)).toEqual(['a', 'b', 'c'])
  })

  it('are on disk when the store is closed at once', async () => {
    const adding = add('a')
    await adding
    await db.destroy()
    expect(onDisk()).toEqual(['a'])
  })
})

describe('transactions on a disk that is full', () => {
  it('count as kept exactly where they are on disk', async () => {
    database.pragma('max_page_count = 12')
    const long = (name: string): Promise<void> => add(name.repeat(9000))
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']
    const outcomes = await Promise.allSettled([...names.map(long), add('z')])
    const kept = [...names, 'z'].filter((_, at) => outcomes[at]?.status === 'fulfilled')
    expect(kept.length).toBeLessThan(outcomes.length)
    expect(onDisk().map((name) => name.charAt(0))).toEqual(kept)
    database.pragma('max_page_count = 1000000')
    await add('afterwards')
    expect(onDisk()).toContain('afterwards')
  })

  it('are all told that they were lost when SQLite undid the whole group by itself', async () => {
    // What SQLite does on some faults of the disk, done by hand: https://www.sqlite.org/lang_transaction.html, section 3.
    const failing = () => db.transaction().execute(async (trx) => {
      await trx.insertInto('leaf').values({ name: 'b' }).execute()
      database.exec('rollback')
      throw new Error('the disk failed')
    })
    const outcomes = await Promise.allSettled([add('a'), failing(), add('c')])
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'fulfilled'])
    expect(onDisk()).toEqual(['c'])
    expect(told).toEqual(['done', 'undone', 'lost', 'done', 'committed'])
  })
})
