import supertest from 'supertest'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type AppParts } from '../../src/http/index.js'
import { cookieNamed } from '../../src/http/session-cookie.js'
import { cookieOf, type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

let world: HttpWorld
const open = async (settings: Partial<AppParts['settings']> = {}) => {
  world = await openHttpWorld(settings)
}
afterEach(() => world.close())

/** The name of the session cookie as the OpenAPI document says it. */
async function cookieInDocument(): Promise<unknown> {
  const { body } = await supertest(world.app).get('/api/openapi.json').expect(200) as { body: { components: { securitySchemes: { session: { name: unknown } } } } }
  return body.components.securitySchemes.session.name
}

describe('signing in', () => {
  beforeEach(() => open())

  it('sets a cookie that no script can read and no other site sends', async () => {
    const { password } = await world.desk.desk.addPerson('sedge', 'specialist')
    const reply = await supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password }).expect(200)
    expect(reply.body).toEqual({ name: 'sedge', role: 'specialist', codes: 'off', recoveryCodesLeft: 0 })
    expect(reply.headers['set-cookie']).toEqual([
      expect.stringMatching(/^frondline=[A-Za-z0-9_-]{43}; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/)])
    expect(reply.headers['cache-control']).toBe('no-store')
    expect(await cookieInDocument()).toBe('frondline')
  })

  it('knows who is signed in until they sign out', async () => {
    const sedge = await world.signedIn('sedge', 'specialist')
    expect((await sedge.get('/api/me').expect(200)).body).toMatchObject({ name: 'sedge', role: 'specialist' })
    const out = await sedge.post('/api/sign-out').expect(204)
    expect(out.headers['set-cookie']).toEqual([expect.stringMatching(/^frondline=; .*Expires=Thu, 01 Jan 1970/)])
    await sedge.get('/api/me').expect(401)
    await supertest(world.app).post('/api/sign-out').expect(204)
  })

  it('takes no made-up, empty or doubled cookie', async () => {
    const sedge = await world.signedIn('sedge', 'specialist')
    for (const cookie of [
      'frondline=', 'frondline=x', `frondline=${'x'.repeat(43)}`, `${sedge.cookie}x`, sedge.cookie.replace('frondline', 'other'),
      'frondline', ';;;=', `frondline="${sedge.cookie}"`, `frondline=${'x'.repeat(9000)}`,
    ]) {
      await supertest(world.app).get('/api/me').set('cookie', cookie).expect(401)
    }
  })

  it('refuses a wrong password and a wrong name alike, and sets no cookie', async () => {
    await world.desk.desk.addPerson('sedge', 'specialist')
    const wrong = await supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password: 'x' }).expect(401)
    const nobody = await supertest(world.app).post('/api/sign-in').send({ name: 'nobody', password: 'x' }).expect(401)
    expect({ ...problemOf(wrong), request: '' }).toEqual({ ...problemOf(nobody), request: '' })
    expect(wrong.headers['set-cookie']).toBeUndefined()
  })

  it('pauses an address after five failures and says for how long', async () => {
    for (let turn = 0; turn < 5; turn++) {
      await supertest(world.app).post('/api/sign-in').send({ name: `name ${turn}`, password: 'x' }).expect(401)
    }
    const paused = await supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password: 'x' }).expect(429)
    expect(problemOf(paused).code).toBe('SIGN_IN_PAUSED')
    expect(paused.headers['retry-after']).toBe('15')
  })

  it('lets through no more than a handful of many wrong passwords sent at once', async () => {
    const replies = await Promise.all(Array.from({ length: 20 }, () => (
      supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password: 'x' }))))
    expect(replies.filter(({ status }) => status === 401)).toHaveLength(5)
    expect(replies.filter(({ status }) => status === 429)).toHaveLength(15)
  })
})

describe('signing in behind HTTPS', () => {
  beforeEach(() => open({ behindHttps: true }))

  it('sends the cookie over HTTPS only, to this host only', async () => {
    const { password } = await world.desk.desk.addPerson('sedge', 'specialist')
    const reply = await supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password }).expect(200)
    expect(reply.headers['set-cookie']).toEqual([
      expect.stringMatching(/^__Host-frondline=[^;]+; Path=\/; Expires=[^;]+; HttpOnly; Secure; SameSite=Strict$/)])
    await supertest(world.app).get('/api/me').set('cookie', cookieOf(reply)).expect(200)
    await supertest(world.app).get('/api/me').set('cookie', cookieOf(reply).replace('__Host-', '')).expect(401)
    expect(await cookieInDocument()).toBe(cookieOf(reply).split('=')[0])
  })

  it('has browsers come back over HTTPS alone, for a year', async () => {
    for (const path of ['/', '/healthz', '/nothing']) {
      await supertest(world.app).get(path).expect('strict-transport-security', 'max-age=31536000; includeSubDomains')
    }
  })

  it('counts failures by the asker\'s address that the proxy names', async () => {
    const attempt = (from: string, name: string) => (
      supertest(world.app).post('/api/sign-in').set('x-forwarded-for', from).send({ name, password: 'x' }))
    for (let turn = 0; turn < 5; turn++) await attempt('198.51.100.1', `name ${turn}`).expect(401)
    await attempt('198.51.100.1', 'sedge').expect(429)
    await attempt('203.0.113.9, 198.51.100.1', 'sedge').expect(429)
    await attempt('198.51.100.2', 'sedge').expect(401)
  })

  it('takes a page of this host over HTTPS as our own', async () => {
    const sedge = await world.signedIn('sedge', 'specialist')
    const close = (headers: Record<string, string>) => (
      supertest(world.app).post('/api/sign-out').set('cookie', sedge.cookie).set('host', 'plants.example')
        .set('x-forwarded-proto', 'https').set(headers))
    await close({ origin: 'http://plants.example' }).expect(403)
    await close({ origin: 'https://plants.example' }).expect(204)
  })
})

describe('requests that other pages send with a signed-in person\'s cookie', () => {
  beforeEach(() => open())

  it.each([
    ['a page elsewhere', { 'sec-fetch-site': 'cross-site' }], ['a sister host', { 'sec-fetch-site': 'same-site' }],
    ['a page elsewhere in an older browser', { origin: 'https://elsewhere.example' }], ['a file', { origin: 'null' }],
    ['no page that says so', {}],
    ['a page elsewhere that claims ours', { 'sec-fetch-site': 'cross-site', origin: 'http://127.0.0.1' }],
  ])('refuses one from %s', async (_name, headers) => {
    const willow = await world.signedIn('willow', 'volunteer')
    const { link } = await openCase(world.app, 'help')
    const reply = await supertest(world.app).post(`/api/cases/${link}/notes`).set('cookie', willow.cookie).set(headers)
      .send({ revision: 0, text: 'forged' }).expect(403)
    expect(problemOf(reply).code).toBe('OTHER_ORIGIN')
    expect(await world.desk.desk.showCase(link, null)).toMatchObject({ revision: 0 })
  })

  it('takes one from our own page, in new browsers and old', async () => {
    const willow = await world.signedIn('willow', 'volunteer')
    const { link } = await openCase(world.app, 'help')
    const note = (revision: number, headers: Record<string, string>) => (
      supertest(world.app).post(`/api/cases/${link}/notes`).set('cookie', willow.cookie).set('host', 'plants.example')
        .set(headers).send({ revision, text: `note ${revision}` }))
    await note(0, { 'sec-fetch-site': 'same-origin' }).expect(200)
    await note(1, { 'sec-fetch-site': 'none' }).expect(200)
    await note(2, { origin: 'http://plants.example' }).expect(200)
  })

  it('lets nobody be signed in from elsewhere', async () => {
    const { password } = await world.desk.desk.addPerson('sedge', 'specialist')
    await supertest(world.app).post('/api/sign-in').set('sec-fetch-site', 'cross-site')
      .send({ name: 'sedge', password }).expect(403)
  })
})

describe('the cookie header', () => {
  beforeEach(() => open())

  it.each([
    ['frondline=abc', 'abc'], ['a=1; frondline=abc; b=2', 'abc'], [' frondline = abc ', 'abc'], ['xfrondline=abc', null],
    ['frondline', null], ['', null], ['frondline=a b', null], ['frondline=%41', null], ['frondline=one; frondline=two', 'one'],
  ])('reads %j as %j', (header, value) => {
    expect(cookieNamed(header, 'frondline')).toBe(value)
  })
})
