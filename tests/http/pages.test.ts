import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type HttpWorld, openHttpWorld } from './http-world.js'

const ORIGIN = 'https://parish.example'

describe('pages and headers', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld({ panelOrigins: [ORIGIN] })
  })
  afterAll(() => world.close())

  it.each([
    ['/', 'demo'], ['/case', 'case'], [`/case/${'x'.repeat(32)}`, 'case'], ['/sheet', 'sheet'], ['/bench', 'bench'],
    ['/sign-in', 'sign-in'],
  ])('serves %s', async (path, page) => {
    const reply = await supertest(world.app).get(path).expect(200).expect('content-type', /^text\/html/)
    expect(reply.text).toContain(`<title>${page}</title>`)
    expect(reply.headers['cache-control']).toBe('no-cache')
  })

  it('shows a browser a page where nothing is, and tells a program in a problem document', async () => {
    const inBrowser = 'text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,*/*;q=0.8'
    for (const path of ['/nosuch', '/case/a/b', '/demo.html']) {
      const page = await supertest(world.app).get(path).set('accept', inBrowser).expect(404).expect('content-type', /^text\/html/)
      expect(page.text).toContain('<title>missing</title>')
      expect(page.headers['cache-control']).toBe('no-store')
      for (const accept of ['*/*', 'application/json', 'application/problem+json']) {
        await supertest(world.app).get(path).set('accept', accept).expect(404).expect('content-type', /^application\/problem\+json/)
      }
    }
    await supertest(world.app).get('/api/nosuch').set('accept', inBrowser).expect(404).expect('content-type', /^application\/problem\+json/)
    await supertest(world.app).post('/nosuch').set('accept', inBrowser).expect(404).expect('content-type', /^application\/problem\+json/)
  })

  it('lets a page run nothing but our own files, and be framed by nobody', async () => {
    const { headers } = await supertest(world.app).get('/')
    const policy = headers['content-security-policy'] ?? ''
    expect(policy).toContain(`default-src 'none'`)
    expect(policy).toContain(`script-src 'self'`)
    expect(policy).toContain(`frame-ancestors 'none'`)
    expect(policy).not.toMatch(/unsafe|\*|https:/)
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'x-frame-options': 'DENY',
      'cross-origin-resource-policy': 'same-origin',
    })
    expect(headers['x-powered-by']).toBeUndefined()
    expect(headers['strict-transport-security']).toBeUndefined()
  })

  it('lets pages elsewhere load the panel\'s script and modules, and only those', async () => {
    const { headers } = await supertest(world.app).get('/panel.js').expect(200).expect('content-type', /javascript/)
    expect(headers).toMatchObject({
      'cross-origin-resource-policy': 'cross-origin', 'access-control-allow-origin': '*', 'cache-control': 'no-cache',
    })
    const part = await supertest(world.app).get('/panel/core-1a2b.js').expect(200).expect('content-type', /javascript/)
    expect(part.headers).toMatchObject({
      'cross-origin-resource-policy': 'cross-origin', 'access-control-allow-origin': '*', 'cache-control': 'public, max-age=31536000, immutable',
    })
    await supertest(world.app).get('/panel/').expect(404)
    const asset = await supertest(world.app).get('/assets/ink-1a2b.css').expect(200)
    expect(asset.headers['cross-origin-resource-policy']).toBe('same-origin')
    expect(asset.headers['cache-control']).toBe('public, max-age=31536000, immutable')
  })

  it('lets the panel ask from a listed page, without cookies', async () => {
    const early = await supertest(world.app).options('/api/cases').set('origin', ORIGIN)
      .set('access-control-request-method', 'POST').set('access-control-request-headers', 'content-type').expect(204)
    expect(early.headers).toMatchObject({
      'access-control-allow-origin': ORIGIN, 'access-control-allow-methods': 'GET, POST, PUT',
      'access-control-allow-headers': 'content-type',
    })
    for (const path of ['/api/region', '/api/guide/hosts', '/api/guide/hosts/lettuce/complaints', '/api/cases/x']) {
      const { headers } = await supertest(world.app).get(path).set('origin', ORIGIN)
      expect(headers['access-control-allow-origin']).toBe(ORIGIN)
      expect(headers['access-control-allow-credentials']).toBeUndefined()
      expect(headers['vary']).toContain('Origin')
    }
    await supertest(world.app).post('/api/cases').set('origin', ORIGIN).set('sec-fetch-site', 'cross-site')
      .send({ words: 'help' }).expect(201).expect('access-control-allow-origin', ORIGIN)
  })

  it.each([
    ['another origin', '/api/cases', 'https://elsewhere.example'], ['the same host over HTTP', '/api/cases', 'http://parish.example'],
    ['a host that only begins alike', '/api/cases', `${ORIGIN}.evil.example`], ['no origin', '/api/cases', 'null'],
    ['a listed origin asking for tickets', '/api/tickets', ORIGIN], ['a listed origin signing in', '/api/sign-in', ORIGIN],
    ['a listed origin asking for calls', '/api/calls', ORIGIN],
  ])('gives no permission to %s', async (_name, path, origin) => {
    const early = await supertest(world.app).options(path).set('origin', origin).set('access-control-request-method', 'POST')
    expect(early.headers['access-control-allow-origin']).toBeUndefined()
    const reply = await supertest(world.app).get(path).set('origin', origin)
    expect(reply.headers['access-control-allow-origin']).toBeUndefined()
  })

  it('remembers no answer of the API in a browser', async () => {
    for (const path of ['/api/region', '/healthz', '/api/guide/hosts']) {
      await supertest(world.app).get(path).expect(200).expect('cache-control', 'no-store')
    }
  })
})
