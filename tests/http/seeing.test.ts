import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { convert } from 'xmlbuilder2'
import { z } from 'zod'
import type { SeeingList } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { keepInventedCounts } from '../../src/store/index.js'
import { type HttpWorld, openHttpWorld } from './http-world.js'

const ORIGIN = 'https://parish.example'
const HOST = 'helpline.example'
const WEEK = '2026-W20'
const ATOM = 'http://www.w3.org/2005/Atom'

let world: HttpWorld
let sedge: Member
beforeAll(async () => {
  world = await openHttpWorld({ panelOrigins: [ORIGIN] })
  sedge = await world.desk.member('sedge', 'specialist')
  await keepInventedCounts(world.desk.store.db, [['holt-fen', 9], ['larkmoor', 7], ['eastmere', 2]].map(([district, cases]) => (
    { problem: 'rose-black-spot', host: 'rose', district: String(district), week: WEEK, reports: Number(cases), cases: Number(cases), settled: 0 })))
})
afterAll(() => world.close())

const get = (path: string) => supertest(world.app).get(path).set('host', HOST)
const approve = (week: string, lead: string, text = 'Pick off <spotted> leaves & bin them.') => (
  world.desk.desk.approveNote({ week, note: { lead, problems: [{ problem: 'rose-black-spot', text }] } }, sedge))

interface Entry { id: string; title: string; published: string; updated: string; link: Record<string, string>; content: { '@type': string; '#': string } }
interface Feed { '@xmlns': string; id: string; title: string; updated: string; author: { name: string }; link: Record<string, string>[]; entry?: Entry | Entry[] }
async function feed(): Promise<Feed & { entries: Entry[] }> {
  const reply = await get('/seeing.atom').expect(200).expect('content-type', /^application\/atom\+xml/)
  const { feed: read } = convert(reply.text, { format: 'object' }) as unknown as { feed: Feed }
  return { ...read, entries: [read.entry ?? []].flat() }
}

describe('what we are seeing', () => {
  it('says so calmly while there is no note, on the page and in a feed that is whole', async () => {
    expect((await get('/seeing').expect(200)).text).toContain('There is no note yet.')
    const empty = await feed()
    expect(empty).toMatchObject({ id: `tag:${HOST},2026:seeing`, updated: '1970-01-01T00:00:00Z', entries: [] })
    expect((await get('/seeing.json').expect(200)).body).toMatchObject({ notes: [] })
  })

  it('is a page without script for anyone, with people’s words as words and no count under the set size', async () => {
    await approve(WEEK, 'Roses first.')
    const { text, headers } = await get('/seeing').expect(200).expect('content-type', /^text\/html/)
    expect(text).toContain('<title>What we are seeing, 11\u2009–\u200917 May 2026 – Larkmoor Plant Helpline</title>')
    expect(text).toContain('Pick off &lt;spotted> leaves &amp; bin them.')
    expect(text).toContain('Reports: Holt Fen 9; 18 in all.')
    expect(text).not.toMatch(/Eastmere|Larkmoor \d/)
    expect(text).not.toContain('<script')
    expect(headers['cache-control']).toBe('public, max-age=60')
    expect(headers['set-cookie']).toBeUndefined()
  })

  it('shows an earlier week by its address, and says of any other that there is none', async () => {
    await approve('2026-W18', 'Two weeks ago.')
    expect((await get('/seeing?week=2026-W18').expect(200)).text).toContain('Two weeks ago.')
    expect((await get('/seeing').expect(200)).text).toMatch(/href="\/seeing\?week=2026-W18"/)
    for (const week of ['2026-W19', '2031-W01', 'yesterday', '2026-W18&week=2026-W20', '<b>', '']) {
      const { text } = await get(`/seeing?week=${week}`).expect(404)
      expect(text).toContain('There is no note for this week.')
      expect(text).not.toContain('<b>')
    }
  })

  it('fits, as JSON, the schema that is served beside it, and says the same to programs', async () => {
    const { body: schema } = await get('/seeing.schema.json').expect(200).expect('content-type', /^application\/schema\+json/).buffer(true).parse((reply, done) => {
      let text = ''
      reply.on('data', (part: Buffer) => { text += part.toString() })
      reply.on('end', () => done(null, JSON.parse(text)))
    })
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' })
    const { body } = await get('/seeing.json').expect(200).expect('access-control-allow-origin', '*') as { body: SeeingList }
    const fits = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0])
    expect(fits.safeParse(body).error).toBeUndefined()
    expect(fits.safeParse({ ...body, notes: [{ ...body.notes[0], monday: 'soon' }] }).success).toBe(false)
    expect((await get('/api/seeing').expect(200)).body).toEqual(body)
    expect(body.notes[0]?.problems[0]).toMatchObject({ total: 18, places: [{ name: 'Holt Fen', count: 9 }] })
  })

  it('is a feed that RFC 4287 allows', async () => {
    const { '@xmlns': space, id, title, updated, author, link, entries } = await feed()
    // RFC 4287, 4.1.1: a feed has one id, title and updated; an author here stands for every entry (4.1.2).
    expect(space).toBe(ATOM)
    expect([id, title, author.name]).toEqual([`tag:${HOST},2026:seeing`, 'What we are seeing in Larkmoor Valley', 'Larkmoor Plant Helpline'])
    // 4.1.1: a feed should have a link to itself, and at most one alternate of a type.
    expect(link.map((one) => [one['@rel'], one['@href']])).toEqual([['self', `http://${HOST}/seeing.atom`], ['alternate', `http://${HOST}/seeing`]])
    // 4.1.2: an entry has one id, title and updated. 3.3: dates are those of RFC 3339.
    expect(entries.map((entry) => [entry.id, entry.title])).toEqual([
      [`tag:${HOST},2026:seeing/2026-W20`, 'What we are seeing, 11\u2009–\u200917 May 2026'], [`tag:${HOST},2026:seeing/2026-W18`, 'What we are seeing, 27 April\u2009–\u20093 May 2026'],
    ])
    for (const date of [updated, ...entries.flatMap((entry) => [entry.updated, entry.published])]) expect(z.iso.datetime({ offset: true }).safeParse(date).success, date).toBe(true)
    expect(updated).toBe(entries.map((entry) => entry.updated).sort().at(-1))
    // RFC 4151, 2.1: tag:authority,date:specific
    for (const one of [id, ...entries.map((entry) => entry.id)]) expect(one).toMatch(/^tag:[a-z0-9.-]+,\d{4}(-\d\d){0,2}:[\w./-]+$/i)
    // 3.1.1.1: a text holds no markup of its own. This reader leaves entities as they stand in the file.
    expect(entries[0]?.content).toEqual({ '@type': 'text', '#': 'Roses first.\n\nRose black spot: Pick off &lt;spotted&gt; leaves &amp; bin them.' })
  })

  it('keeps an entry’s id when the note is approved anew, and moves its date', async () => {
    const before = (await feed()).entries[0]
    world.desk.now = new Date('2026-05-15T08:00:00.000Z')
    await approve(WEEK, 'Roses still.')
    const { updated, entries: [after] } = await feed()
    expect([after?.id, after?.published, after?.updated, updated]).toEqual([before?.id, before?.published, '2026-05-15T08:00:00.000Z', '2026-05-15T08:00:00.000Z'])
  })

  it('may be shown inside the pages that may hold the panel, and inside no other; the whole page inside none', async () => {
    const inside = await get('/seeing/inside').expect(200)
    expect(inside.headers['content-security-policy']).toContain(`frame-ancestors 'self' ${ORIGIN}`)
    expect(inside.headers['content-security-policy']).toContain("default-src 'none'")
    expect(inside.headers['x-frame-options']).toBeUndefined()
    expect(inside.text).toMatch(/<a href="\/seeing" target="_top">/)
    expect(inside.text).not.toMatch(/<form|<button|href="\/ask"(?! target)/)
    for (const path of ['/seeing', '/seeing.atom', '/seeing.json']) {
      const { headers } = await get(path)
      expect(headers['content-security-policy'], path).toContain("frame-ancestors 'none'")
      expect(headers['x-frame-options'], path).toBe('DENY')
    }
    const alone = await openHttpWorld()
    try {
      expect((await supertest(alone.app).get('/seeing/inside')).headers['content-security-policy']).toMatch(/frame-ancestors 'self'(;|$)/)
    } finally {
      await alone.close()
    }
  })

  it('gives a feed whatever host a request names', async () => {
    for (const host of ['a b', 'x:y:z', '[::1]:8080', '%%', '"><x>']) {
      const reply = await supertest(world.app).get('/seeing.atom').set('host', host)
      expect(reply.status, host).toBe(200)
      expect(() => convert(reply.text, { format: 'object' })).not.toThrow()
    }
  })

  it('is gone from everywhere once it is taken back', async () => {
    await world.desk.desk.takeBackNote({ week: WEEK }, sedge)
    await get(`/seeing?week=${WEEK}`).expect(404)
    for (const path of ['/seeing', '/seeing/inside', '/seeing.atom', '/seeing.json', '/api/seeing']) expect((await get(path).expect(200)).text, path).not.toContain('Roses')
  })
})
