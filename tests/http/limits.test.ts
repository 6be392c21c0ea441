import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type HttpWorld, openHttpWorld, problemOf } from './http-world.js'

describe('too many requests from one address', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld({ casesPerMinute: 3, signInsPerMinute: 2 })
  })
  afterAll(() => world.close())

  it('opens so many cases a minute and refuses the next, with a word on when to come back', async () => {
    for (let turn = 0; turn < 3; turn++) await supertest(world.app).post('/api/cases').send({ words: 'help' }).expect(201)
    const reply = await supertest(world.app).post('/api/cases').send({ words: 'help' }).expect(429)
    expect(problemOf(reply)).toMatchObject({ code: 'TOO_MANY' })
    expect(reply.headers['retry-after']).toBe('60')
    expect(reply.headers['ratelimit']).toMatch(/limit=3, remaining=0/)
  })

  it('still shows and changes the cases that are open', async () => {
    const { link } = await world.desk.desk.openCase({ words: 'my lettuce' }, null)
    await supertest(world.app).get(`/api/cases/${link}`).expect(200)
    await supertest(world.app).post(`/api/cases/${link}/words`).send({ revision: 0, words: 'more' }).expect(200)
  })

  it('takes so many changes a minute of one case, refused ones too, while others go on', async () => {
    const { link } = await world.desk.desk.openCase({ words: 'my lettuce' }, null)
    const { link: other } = await world.desk.desk.openCase({ words: 'my lettuce' }, null)
    const change = (one: string) => supertest(world.app).post(`/api/cases/${one}/take-back`).send({ revision: 0, check: 'leaf-underside' })
    const replies: number[] = []
    for (let turn = 0; turn < 301; turn++) replies.push((await change(link)).status)
    expect(replies.indexOf(429)).toBe(300)
    expect(problemOf(await change(link)).code).toBe('TOO_MANY')
    expect((await change(other)).status).not.toBe(429)
    await supertest(world.app).get(`/api/cases/${link}`).expect(200)
  }, 60_000)

  it('tries so many sign-ins a minute, whatever the names', async () => {
    for (const name of ['a', 'b']) {
      await supertest(world.app).post('/api/sign-in').send({ name, password: 'x' }).expect(401)
    }
    const reply = await supertest(world.app).post('/api/sign-in').send({ name: 'c', password: 'x' }).expect(429)
    expect(problemOf(reply).code).toBe('TOO_MANY')
  })
})
