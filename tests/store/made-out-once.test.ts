import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { madeOutOnce } from '../../src/store/made-out-once.js'
import { openStore, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from './test-store.js'

const UNTIL = '2026-05-14T12:01:00.000Z'

let home: string
let store: Store
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-made-out-'))
  store = await openStore(await testStore(home))
})
afterAll(async () => {
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

describe('a statement that is made out once', () => {
  it('takes other values at each use, inside a transaction and outside', async () => {
    let madeOut = 0
    const add = madeOutOnce((db) => {
      madeOut += 1
      return db.insertInto('request_count').values({ count_key: '', until: '', times: 0 })
    })
    const find = madeOutOnce((db) => db.selectFrom('request_count').select('times').where('count_key', '=', ''))
    await add(store.db, ['one', UNTIL, 1])
    await store.db.transaction().execute(async (db) => {
      await add(db, ['two', UNTIL, 2])
      expect(await find(db, ['two'])).toEqual([{ times: 2 }])
    })
    expect(await find(store.db, ['one'])).toEqual([{ times: 1 }])
    expect(await find(store.db, ['three'])).toEqual([])
    expect(madeOut).toBe(1)
  })

  it('says so when it is given more or fewer values than it names', async () => {
    const find = madeOutOnce((db) => db.selectFrom('request_count').select('times').where('count_key', '=', ''))
    await expect(find(store.db, [])).rejects.toThrow('takes 1 values and was given 0')
    await expect(find(store.db, ['one', 'two'])).rejects.toThrow('takes 1 values and was given 2')
  })
})
