import { pino } from 'pino'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { LiveChange } from '../../shared/index.js'
import { buildApp } from '../../src/http/index.js'
import { listen, type OpenPort } from '../../src/http/listen.js'
import { liveStreams, type LiveStreams } from '../../src/http/live-streams.js'
import { LETTUCE_WORDS, openWorld, type World } from '../desk/desk-world.js'
import { type Asker, type HttpWorld, openHttpWorld } from './http-world.js'

const SETTINGS = { panelOrigins: [], behindHttps: false, casesPerMinute: 1000, signInsPerMinute: 1000 }
const ANYTHING: LiveChange = { ticket: null, kind: 'anything', by: null }

let world: HttpWorld
let sedge: Asker
let streams: LiveStreams
let port: OpenPort

beforeAll(async () => {
  world = await openHttpWorld()
  sedge = await world.signedIn('sedge', 'specialist')
})
afterAll(() => world.close())

beforeEach(async () => {
  streams = liveStreams({ beatMs: 50, lastsMs: 60_000, most: 2 })
  port = await serve(world.desk)
})
afterEach(async () => {
  streams.endAll()
  await port.close()
})

const serve = (desk: World) => listen(
  buildApp({ desk: desk.desk, log: pino({ level: 'silent' }), settings: SETTINGS, webDir: '/nowhere', streams, guideState: () => ({ guide: 'none', since: '', refused: null }) }),
  { host: '127.0.0.1', port: 0 })

/** An open stream: the changes so far, everything sent so far, and whether it has ended. */
interface Heard { readonly changes: LiveChange[]; text: string; isOver: boolean }

async function follow(url: string, cookie: string): Promise<Heard> {
  const reply = await fetch(`${url}/api/tickets/events`, { headers: { cookie } })
  expect(reply.status).toBe(200)
  expect(reply.headers.get('content-type')).toBe('text/event-stream; charset=utf-8')
  const heard: Heard = { changes: [], text: '', isOver: false }
  void (async () => {
    const decoder = new TextDecoder()
    for await (const bytes of reply.body ?? []) {
      heard.text += decoder.decode(bytes as Uint8Array, { stream: true })
      heard.changes.splice(0, Infinity, ...[...heard.text.matchAll(/^event: change\ndata: (.+)\n\n/gm)]
        .map(([, json]) => JSON.parse(json ?? '') as LiveChange))
    }
  })().catch(() => undefined).finally(() => { heard.isOver = true })
  await expect.poll(() => heard.changes[0]).toEqual(ANYTHING)
  return heard
}

/** The changes that name their ticket; on PostgreSQL the beginning of listening says once more that anything may have changed. */
const named = ({ changes }: Heard): LiveChange[] => changes.filter(({ ticket }) => ticket !== null)

/** Hands a lettuce case over and gives its ticket and link. */
async function handOver(desk: World): Promise<{ link: string; ticket: string }> {
  const opened = await desk.desk.openCase({ words: LETTUCE_WORDS }, null)
  const contact = { name: 'Fern Marsh', email: 'fern@larkmoor.example' }
  await desk.desk.handOver(opened.link, { revision: 0, note: 'by the old gate', contact }, null)
  const { tickets } = await desk.desk.listTickets({ state: 'waiting' } as never)
  return { link: opened.link, ticket: tickets.at(-1)?.ticket ?? '' }
}

describe('the stream of changes', () => {
  it('tells which ticket changed, how and by whom, and nothing of the asker', async () => {
    const heard = await follow(port.url, sedge.cookie)
    const { link, ticket } = await handOver(world.desk)
    await expect.poll(() => named(heard)).toEqual([{ ticket, kind: 'opened', by: null }])
    await sedge.post(`/api/tickets/${ticket}/take`).expect(200)
    await expect.poll(() => named(heard).slice(1)).toEqual([{ ticket, kind: 'taken', by: 'sedge' }])
    await world.desk.desk.addWords(link, { revision: 1, words: 'the roots look fine' }, null)
    await expect.poll(() => named(heard).slice(2)).toContainEqual({ ticket, kind: 'case', by: null })
    expect(heard.text).not.toMatch(/Fern|larkmoor|gate|lettuce|roots/)
    expect(heard.text).not.toContain(link)
  })

  it('tells of what another process on the same store did', async () => {
    const other = await openWorld(world.desk.home)
    const otherPort = await serve(other)
    const heard = await follow(otherPort.url, sedge.cookie)
    const { ticket } = await handOver(world.desk)
    const expected = world.desk.store.name === 'SQLite' ? ANYTHING : { ticket, kind: 'opened', by: null }
    await expect.poll(() => heard.changes.slice(1), { timeout: 10_000 }).toContainEqual(expected)
    streams.endAll()
    await otherPort.close()
    await other.store.close()
  })

  it('gives signs of life, and ends when the session does', async () => {
    const rush = await world.signedIn('rush', 'specialist')
    const heard = await follow(port.url, rush.cookie)
    await expect.poll(() => heard.text).toContain(': still here\n\n')
    expect(heard.isOver).toBe(false)
    await rush.post('/api/sign-out').expect(204)
    await expect.poll(() => heard.isOver).toBe(true)
    expect(streams.count()).toBe(0)
  })

  it('lets go of a browser that leaves, and takes no more streams than it can keep', async () => {
    const first = new AbortController()
    const ask = (signal?: AbortSignal) => fetch(`${port.url}/api/tickets/events`, { headers: { cookie: sedge.cookie }, ...(signal === undefined ? {} : { signal }) })
    await ask(first.signal)
    await ask()
    const third = await ask()
    expect(third.status).toBe(429)
    first.abort()
    await expect.poll(() => streams.count()).toBe(1)
    expect((await ask()).status).toBe(200)
  })

  it('ends at once when the service stops', async () => {
    const heard = await follow(port.url, sedge.cookie)
    const begun = performance.now()
    streams.endAll()
    await port.close()
    await expect.poll(() => heard.isOver).toBe(true)
    expect(performance.now() - begun).toBeLessThan(5000)
  })
})
