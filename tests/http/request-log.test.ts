import { randomBytes } from 'node:crypto'
import { pino } from 'pino'
import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createDesk } from '../../src/desk/index.js'
import { hiddenAddress } from '../../src/http/hidden-address.js'
import { buildApp } from '../../src/http/index.js'
import { routes } from '../../src/http/routes/index.js'
import { folderHome } from '../../src/photos/index.js'
import { testKeys } from '../desk/desk-world.js'
import { type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

describe('an address in the log', () => {
  it.each(routes.map(({ path }) => path))('shows of %s which route it is, and none of its parts', (path) => {
    expect(hiddenAddress(path.replaceAll(/:[a-z]+/g, 'AbCdEfGhIjKlMnOp'))).toBe(path.replaceAll(/:[a-z]+/g, ':hidden'))
  })

  it.each([
    ['/api/cases/AbCdEfGhIjKlMnOpQrStUvWxYz012345/answers', '/api/cases/:hidden/answers'],
    ['/case/AbCdEfGhIjKlMnOpQrStUvWxYz012345', '/case/:hidden'],
    ['/api/cases/AbCdEfGhIjKlMnOpQrStUvWxYz01234', '/api/cases/:hidden'],
    ['/api/tickets/17/settle', '/api/tickets/17/settle'], ['/api/tickets?state=waiting', '/api/tickets'],
    ['/my%20name%20is', '/:hidden'], ['/healthz?me@larkmoor.example', '/healthz'], ['/', '/'], ['', ''],
    ['/api/guide/hosts/lettuce/problems', '/api/guide/hosts/:hidden/problems'],
    ['/ask/AbCdEfGhIjKlMnOpQrStUvWxYz012345/words', '/ask/:hidden/words'], ['/ask/find', '/ask/find'],
    ['/api/tickets/events', '/api/tickets/events'], ['/account', '/account'], ['/join', '/join'], ['/metrics', '/metrics'],
    ['/assets/ink-1a2b.css', '/assets/:hidden'], ['/1234567890123456', '/:hidden'], ['/:link', '/:hidden'],
  ])('writes %s as %s', (address, shown) => {
    expect(hiddenAddress(address)).toBe(shown)
  })
})

describe('the request log', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld()
  })
  afterAll(() => world.close())

  it('holds nothing of what anyone said, nor how to reach them, nor the keys to a case or a session', async () => {
    const { password } = await world.desk.desk.addPerson('sedge', 'specialist')
    const signed = await supertest(world.app).post('/api/sign-in').send({ name: 'sedge', password })
    const cookie = signed.headers['set-cookie']?.[0]?.split(';')[0] ?? ''
    const { link } = await openCase(world.app, 'my lettuce speckled words')
    const contact = { name: 'Rosalind Ashdown', email: 'ashdown@larkmoor.example', phone: '555-0190' }
    await supertest(world.app).post(`/api/cases/${link}/hand-over`).send({ revision: 0, contact, note: 'secret gate' })
    await supertest(world.app).get(`/case/${link}`).set('cookie', cookie).set('referer', `http://x/case/${link}`)
    await supertest(world.app).get(`/api/cases/${link}?email=ashdown@larkmoor.example`).set('cookie', cookie)
    await supertest(world.app).post('/api/cases').set('content-type', 'application/json').send('{"words": "broken speckled')
    await supertest(world.app).get(`/nothing/${link}`)
    await supertest(world.app).get('/api/tickets').set('cookie', cookie)

    const all = world.logged.join('')
    expect(world.logged.length).toBeGreaterThanOrEqual(8)
    for (const secret of [link, cookie.split('=')[1] ?? '', password, 'speckled', 'Ashdown', 'ashdown', '0190', 'gate', '127.0.0.1', 'user-agent']) {
      expect(all).not.toContain(secret)
    }
  })

  it('holds the number that the caller was told', async () => {
    const reply = await supertest(world.app).get('/nothing')
    const line = world.logged.find((one) => one.includes(problemOf(reply).request))
    expect(JSON.parse(line ?? '{}')).toMatchObject({ level: 30, req: { method: 'GET', url: '/:hidden' }, res: { statusCode: 404 } })
  })

  it.each(['info', 'warn'])('holds the whole of our own fault at the level %s, and the caller is told its number and no more', async (level) => {
    const logged: string[] = []
    const log = pino({ level }, { write: (line: string) => void logged.push(line) })
    const { store, guide, home, now } = world.desk
    const appOfItsOwn = () => buildApp({
      desk: createDesk({
        db: store.db, listen: store.listen, guide: () => guide,
        photos: folderHome(home), mail: null, report: () => undefined, clock: () => now,
        randomBytes: (count) => randomBytes(count), keys: testKeys(),
      }),
      log, settings, webDir: '/nowhere', guideState: () => ({ guide: guide.hash, since: now.toISOString(), refused: null }),
    })
    const settings = { panelOrigins: [], behindHttps: false, casesPerMinute: 10, signInsPerMinute: 10 }
    const { link } = await openCase(appOfItsOwn(), 'my lettuce')
    await store.db.updateTable('case_file').set({ evidence: '{"speckled":' }).where('link', '=', link).execute()
    // Another service's app has not kept the case in memory and must read what is in the store.
    const app = appOfItsOwn()

    const reply = await supertest(app).get(`/api/cases/${link}`).expect(500)
    const document = problemOf(reply)
    expect(document).toMatchObject({ code: 'UNEXPECTED', status: 500 })
    expect(reply.text).not.toMatch(/JSON|evidence|speckled|\.ts/)
    const fault = logged.map((line) => JSON.parse(line) as Record<string, unknown>)
      .find((line) => line['msg'] === 'a request failed')
    expect(fault).toMatchObject({ level: 50, req: { id: document.request, method: 'GET', url: '/api/cases/:hidden' }, err: { type: 'SyntaxError' } })
    expect(Object.keys(fault?.['req'] ?? {})).toEqual(['id', 'method', 'url'])
    expect(logged.join('')).not.toContain(link)
    if (level === 'warn') expect(logged).toHaveLength(1)
    await store.db.deleteFrom('case_change').execute()
    await store.db.deleteFrom('ticket_change').execute()
  })
})
