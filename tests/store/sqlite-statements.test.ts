import Database from 'better-sqlite3'
import { afterEach, describe, expect, it } from 'vitest'
import { keepingStatements } from '../../src/store/kept-statements.js'

const database = new Database(':memory:')
afterEach(() => { database.exec('drop table if exists leaf') })

describe('the store on SQLite: statements', () => {
  it('are prepared once, as long as they are in use', () => {
    const keeping = keepingStatements(database)
    const one = keeping.prepare('select 1 as n')
    for (let other = 0; other < 250; other++) keeping.prepare(`select ${other} as other`)
    expect(keeping.prepare('select 1 as n')).toBe(one)
    for (let other = 250; other < 600; other++) keeping.prepare(`select ${other} as other`)
    const anew = keeping.prepare('select 1 as n')
    expect(anew).not.toBe(one)
    expect(anew.all([])).toEqual([{ n: 1 }])
  })

  it('give what each use asks for, and follow a table that is changed in between', () => {
    const keeping = keepingStatements(database)
    database.exec('create table leaf (name text)')
    const insert = () => keeping.prepare('insert into leaf (name) values (?)')
    const all = () => keeping.prepare('select * from leaf order by name').all([])
    insert().run(['rose'])
    insert().run(['elm'])
    expect(all()).toEqual([{ name: 'elm' }, { name: 'rose' }])
    database.exec('alter table leaf add column spots integer default 3')
    expect(all()).toEqual([{ name: 'elm', spots: 3 }, { name: 'rose', spots: 3 }])
  })
})
