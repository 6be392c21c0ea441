import { TOTP, Secret } from 'otpauth'
import supertest from 'supertest'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CodeSecret, Invitation, Me, PeopleList, RecoveryCodes } from '../../shared/index.js'
import { type Asker, cookieOf, type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

let world: HttpWorld
let alder: Asker
beforeEach(async () => {
  world = await openHttpWorld()
  alder = await world.signedIn('alder', 'administrator')
}, 180_000)
afterEach(() => world.close())

const PASSWORD = 'hedge lantern otter 9'
const shown = (secret: string) => new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: world.desk.now.getTime() })
const invited = async (name = 'reed', role = 'specialist') => Invitation.parse((await alder.post('/api/people/invite', { name, role }).expect(201)).body)

describe('joining by an invitation', () => {
  it('signs the new person in, and the token is in no log', async () => {
    const { token } = await invited()
    const looked = await supertest(world.app).post('/api/invitation').send({ token }).expect(200)
    expect(looked.body).toMatchObject({ name: 'reed', role: 'specialist' })
    const joined = await supertest(world.app).post('/api/join').send({ token, password: PASSWORD }).expect(200)
    expect(Me.parse(joined.body)).toEqual({ name: 'reed', role: 'specialist', codes: 'off', recoveryCodesLeft: 0 })
    await supertest(world.app).get('/api/tickets').set('cookie', cookieOf(joined)).expect(200)
    expect(problemOf(await supertest(world.app).post('/api/join').send({ token, password: PASSWORD }).expect(404)).code).toBe('INVITATION_SPENT')
    const all = world.logged.join('\n')
    expect(all).not.toContain(token)
    expect(all).not.toContain('hedge lantern')
  })

  it('is refused from another page, or the person would work under a name of somebody\'s choosing', async () => {
    const { token } = await invited()
    await supertest(world.app).post('/api/join').set('sec-fetch-site', 'cross-site').send({ token, password: PASSWORD }).expect(403)
    await supertest(world.app).post('/api/invitation').send({ token }).expect(200)
  })

  it.each(['elevenchars', 'x'.repeat(129)])('takes no password of %j', async (password) => {
    const { token } = await invited()
    expect(problemOf(await supertest(world.app).post('/api/join').send({ token, password }).expect(400)).code).toBe('BODY_DOES_NOT_FIT')
  })

  it('takes a password of 64 signs and of any letters', async () => {
    const { token } = await invited()
    await supertest(world.app).post('/api/join').send({ token, password: `ħøø ${'räven gräver 🌱 '.repeat(4)}` }).expect(200)
  })
})

describe('a person\'s account', () => {
  it('gets one-time codes, is asked for them, and is let in by them', async () => {
    const { password } = await world.desk.desk.addPerson('sedge', 'specialist')
    const signIn = (code?: string) => supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password, ...(code === undefined ? {} : { code }) })
    const cookie = cookieOf(await signIn().expect(200))
    const post = (path: string, body: object) => supertest(world.app).post(path).set({ cookie, 'sec-fetch-site': 'same-origin' }).send(body)
    const { secret, address } = CodeSecret.parse((await post('/api/me/codes/start', { password }).expect(200)).body)
    expect(new URL(address).searchParams.get('secret')).toBe(secret)
    const { codes } = RecoveryCodes.parse((await post('/api/me/codes/confirm', { code: shown(secret) }).expect(200)).body)
    expect(problemOf(await signIn().expect(401)).code).toBe('CODE_NEEDED')
    expect(problemOf(await signIn('000000').expect(401)).code).toBe('CODE_WRONG')
    await signIn(codes[0]).expect(200)
    const all = world.logged.join('\n')
    expect(all).not.toContain(secret)
    expect(all).not.toContain(codes[1])
  })

  it('may do nothing but set up the codes that its role needs, and is the public elsewhere', async () => {
    const sedge = await world.signedIn('sedge', 'specialist')
    const { link } = await openCase(world.app, 'my lettuce is slimy')
    await sedge.post(`/api/cases/${link}/notes`, { revision: 0, text: 'for the helpline only' }).expect(200)
    await alder.post('/api/settings', { codesFor: ['specialist'], eraseContactAfterDays: null }).expect(200)

    for (const path of ['/api/tickets', '/api/casebook', '/api/calls']) {
      expect(problemOf(await sedge.get(path).expect(403)).code).toBe('CODES_TO_SET_UP')
    }
    expect(problemOf(await sedge.post('/api/me/password', { current: 'x', next: PASSWORD }).expect(403)).code).toBe('CODES_TO_SET_UP')
    expect((await sedge.get('/api/me').expect(200)).body).toMatchObject({ codes: 'to be set up' })
    expect((await sedge.get(`/api/cases/${link}`).expect(200)).body).toMatchObject({ notes: [] })
    await sedge.post('/api/sign-out').expect(204)
  })

  it('signs out everywhere', async () => {
    const sedge = await world.signedIn('sedge', 'specialist')
    const out = await sedge.post('/api/me/sign-out-everywhere').expect(204)
    expect(out.headers['set-cookie']).toEqual([expect.stringMatching(/^frondline=; .*Expires=Thu, 01 Jan 1970/)])
    await sedge.get('/api/me').expect(401)
  })
})

describe('the people screen\'s routes', () => {
  it('list, invite, withdraw, change and remove', async () => {
    await world.signedIn('willow', 'volunteer')
    await invited('reed', 'volunteer')
    const list = async () => PeopleList.parse((await alder.get('/api/people').expect(200)).body)
    expect((await list()).people.map(({ name }) => name)).toEqual(['alder', 'willow'])
    expect((await list()).invitations).toMatchObject([{ name: 'reed', by: 'alder' }])
    PeopleList.parse((await alder.post('/api/people/withdraw-invitation', { name: 'reed' }).expect(200)).body)
    PeopleList.parse((await alder.post('/api/people/role', { name: 'willow', role: 'specialist' }).expect(200)).body)
    PeopleList.parse((await alder.post('/api/people/sign-out', { name: 'willow' }).expect(200)).body)
    PeopleList.parse((await alder.post('/api/people/forget-codes', { name: 'willow' }).expect(200)).body)
    PeopleList.parse((await alder.post('/api/people/remove', { name: 'willow' }).expect(200)).body)
    expect(problemOf(await alder.post('/api/people/remove', { name: 'willow' }).expect(404)).code).toBe('PERSON_NOT_FOUND')
    expect(problemOf(await alder.post('/api/people/remove', { name: 'alder' }).expect(409)).code).toBe('LAST_ADMINISTRATOR')
    expect((await list()).people.map(({ name }) => name)).toEqual(['alder'])
  })
})
