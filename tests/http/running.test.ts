import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import express from 'express'
import { pino } from 'pino'
import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../src/http/index.js'
import { limiters } from '../../src/http/limits.js'
import { measureService } from '../../src/http/metrics.js'
import { sharedCounter } from '../../src/http/shared-counter.js'
import { openStore } from '../../src/store/index.js'
import { openWorld, type World } from '../desk/desk-world.js'
import { dropTestStore, storeUnderTest, testStore } from '../store/test-store.js'
import { openCase, problemOf } from './http-world.js'

const guideState = () => ({ guide: 'none', since: '', refused: null })
const SETTINGS = { panelOrigins: [], behindHttps: false, casesPerMinute: 1000, signInsPerMinute: 1000 }

let world: World
beforeAll(async () => { world = await openWorld() })
afterAll(() => world.close())

function app(token: string | null = null) {
  return buildApp({
    desk: world.desk, log: pino({ level: 'silent' }), settings: SETTINGS, webDir: '/nowhere', guideState,
    metrics: measureService({ desk: world.desk, countStreams: () => 3, token }),
  })
}

describe('readiness', () => {
  it('is said while the store answers, and not when it does not, though the process is up', async () => {
    expect((await supertest(app()).get('/readyz').expect(200)).body).toEqual({ ready: true })
    const other = await openWorld()
    const closed = buildApp({ desk: other.desk, log: pino({ level: 'silent' }), settings: SETTINGS, webDir: '/nowhere', guideState })
    await other.close()
    const reply = await supertest(closed).get('/readyz').expect(503)
    expect(problemOf(reply).code).toBe('NOT_READY')
    expect(reply.headers['retry-after']).toBe('5')
    await supertest(closed).get('/healthz').expect(200, { ok: true })
  })
})

describe('metrics', () => {
  it('count requests by place and status, and hold no link, word or name', async () => {
    const measured = app()
    const { link } = await openCase(measured, 'my lettuce has yellow blotches')
    await supertest(measured).get(`/api/cases/${link}`).expect(200)
    await supertest(measured).get('/nothing/here').expect(404)
    await world.desk.handOver(link, { revision: 0 }, null)
    const { text, headers } = await supertest(measured).get('/metrics').expect(200)
    // Prometheus text format 0.0.4: https://prometheus.io/docs/instrumenting/exposition_formats/ (from memory)
    expect(headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/)
    expect(text).toContain('frondline_request_seconds_count{method="GET",route="/api/cases/:link",status="200"} 1')
    expect(text).toContain('frondline_request_seconds_count{method="GET",route="other",status="404"} 1')
    expect(text).toContain('frondline_tickets{state="waiting"} 1')
    expect(text).toContain('frondline_live_streams 3')
    expect(text).toMatch(/process_resident_memory_bytes \d+/)
    expect(text).not.toContain(link)
    expect(text).not.toMatch(/lettuce|nothing/)
  })

  it('go on while the store is down, and say so', async () => {
    const other = await openWorld()
    const measured = buildApp({
      desk: other.desk, log: pino({ level: 'silent' }), settings: SETTINGS, webDir: '/nowhere', guideState,
      metrics: measureService({ desk: other.desk, countStreams: () => 0, token: null }),
    })
    await other.desk.openCase({ words: 'my lettuce' }, null).then(({ link }) => other.desk.handOver(link, { revision: 0 }, null))
    expect((await supertest(measured).get('/metrics').expect(200)).text).toContain('frondline_store_up 1\n')
    await other.close()
    const { text } = await supertest(measured).get('/metrics').expect(200)
    expect(text).toContain('frondline_store_up 0\n')
    expect(text).not.toContain('frondline_tickets{')
    expect(text).toMatch(/process_resident_memory_bytes \d+/)
  })

  it('are for programs on this machine, and not through a proxy', async () => {
    await supertest(app()).get('/metrics').set('x-forwarded-for', '127.0.0.1').expect(404)
  })

  it('ask for the token where one is set', async () => {
    const guarded = app('a token of the region')
    await supertest(guarded).get('/metrics').expect(404)
    await supertest(guarded).get('/metrics').set('authorization', 'Bearer a token of the regioN').expect(404)
    await supertest(guarded).get('/metrics').set('x-forwarded-for', '10.0.0.9').set('authorization', 'Bearer a token of the region').expect(200)
  })
})

describe('limits of an address over several processes', () => {
  it('are one limit on a shared database, forgotten when the minute is over; one process serves SQLite and counts in its memory', async () => {
    const home = await mkdtemp(join(tmpdir(), 'frondline-limits-'))
    const settings = await testStore(home)
    const stores = [await openStore(settings), await openStore(settings)]
    try {
      let now = new Date('2026-05-14T12:00:10.000Z')
      const counters = stores.map((store) => sharedCounter(store, () => now))
      if (storeUnderTest() === 'SQLite') {
        expect(counters).toEqual([undefined, undefined])
        return
      }
      const apps = counters.map((counterOf) => {
        const small = express().use(limiters({ casesPerMinute: 3, signInsPerMinute: 3 }, counterOf)['open case'])
        return small.get('/', (_request, response) => { response.send('in') })
      })
      // express takes its own fault handler for the refusal: 500 is "refused" in this small app.
      const ask = async (at: number) => (await supertest(apps[at] ?? apps[0] ?? express()).get('/')).text === 'in'
      const tried = [await ask(0), await ask(1), await ask(0), await ask(1), await ask(0)]
      expect(tried).toEqual([true, true, true, false, false])
      now = new Date('2026-05-14T12:01:00.000Z')
      expect(await ask(1)).toBe(true)
    } finally {
      for (const store of stores) await store.close()
      await dropTestStore(home)
      await rm(home, { recursive: true, force: true })
    }
  })
})
