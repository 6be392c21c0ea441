import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CaseView, MAX_WORDS } from '../../shared/index.js'
import { type HttpWorld, openHttpWorld } from './http-world.js'

describe('odd but honest words', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld()
  })
  afterAll(() => world.close())

  it.each([
    ['an emoji', '🌱'], ['a question mark', '?'], ['HTML', '<img src=x onerror=alert(1)> my lettuce'],
    ['4,000 characters', 'a'.repeat(MAX_WORDS)], ['2,000 emoji', '🌱'.repeat(MAX_WORDS / 2)],
    ['Arabic', 'ورق الخس أصفر'], ['Chinese', '生菜叶子发黄'], ['combining marks', 'léttu\u0301ce z\u0351\u036b\u0343algo'],
    ['SQL', `'; drop table case_file; --`], ['line ends', 'my lettuce\r\n\r\nis\tyellow'], ['half an emoji', '\ud83c lettuce'],
    ['a way out of the folder', '../../etc/passwd'], ['a formula', '=cmd|calc!A1'],
  ])('takes %s as what it is', async (_name, words) => {
    const opened = await supertest(world.app).post('/api/cases').send({ words }).expect(201)
    const read = await supertest(world.app).get(`/api/cases/${CaseView.parse(opened.body).link}`).expect(200)
    expect(read.body).toMatchObject({ words: [words.startsWith('\ud83c ') ? expect.stringContaining('lettuce') : words] })
    expect(read.headers['content-type']).toBe('application/json; charset=utf-8')
    expect(read.headers['x-content-type-options']).toBe('nosniff')
    await supertest(world.app).post('/api/suggest').send({ words }).expect(200)
  })
})
