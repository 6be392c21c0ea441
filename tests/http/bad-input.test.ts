import supertest from 'supertest'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type CaseView, ProblemDocument } from '../../shared/index.js'
import { errors } from '../../src/http/errors.js'
import { type Asker, type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

let world: HttpWorld
let sedge: Asker
let view: CaseView
let ticket: string
/** Everything that the store holds, to see that nothing was changed. */
let before: string

beforeAll(async () => {
  world = await openHttpWorld()
  sedge = await world.signedIn('sedge', 'specialist')
  const handed = await openCase(world.app, 'my rose has black spots')
  await supertest(world.app).post(`/api/cases/${handed.link}/hand-over`).send({ revision: 0 }).expect(200)
  ticket = (await world.desk.desk.listTickets({ state: 'waiting' })).tickets[0]?.ticket ?? ''
  view = await openCase(world.app, 'my lettuce has yellow blocks on its leaves')
  before = await everything()
})
afterAll(() => world.close())
afterEach(async () => {
  expect(await everything(), 'nothing was changed').toBe(before)
})

async function everything(): Promise<string> {
  const { db } = world.desk.store
  return JSON.stringify([
    await db.selectFrom('case_file').selectAll().execute(), await db.selectFrom('case_change').selectAll().execute(),
    await db.selectFrom('ticket').selectAll().execute(), await db.selectFrom('ticket_change').selectAll().execute(),
    await db.selectFrom('contact_sealed').selectAll().execute(), await db.selectFrom('person').selectAll().execute(),
    await db.selectFrom('session').selectAll().execute(),
  ])
}

function expectRefusal(reply: supertest.Response, code: keyof typeof errors): ProblemDocument {
  expect(reply.headers['content-type']).toMatch(/^application\/problem\+json/)
  const document = problemOf(reply)
  expect(ProblemDocument.parse(document)).toEqual(document)
  expect(document).toMatchObject({ code, status: reply.status, title: errors[code].title })
  expect(reply.status).toBe(errors[code].status)
  return document
}

/** Each door that takes a body, as an address and a body that would fit. */
const doors = (): [path: string, body: Record<string, unknown>][] => [
  ['/api/cases', { words: 'help' }],
  ['/api/suggest', { words: 'help' }],
  [`/api/cases/${view.link}/place`, { revision: 0, host: 'lettuce', node: null }],
  [`/api/cases/${view.link}/words`, { revision: 0, words: 'more' }],
  [`/api/cases/${view.link}/answers`, { revision: 0, check: 'plant-part', answer: 'not sure' }],
  [`/api/cases/${view.link}/carry-on`, { revision: 0 }],
  [`/api/cases/${view.link}/hand-over`, { revision: 0 }],
  [`/api/cases/${view.link}/notes`, { revision: 0, text: 'a note' }],
  [`/api/tickets/${ticket}/settle`, { text: 'an answer', outcome: { kind: 'not known' } }],
  ['/api/sign-in', { name: 'sedge', password: 'x' }],
]
const DOOR_COUNT = 10
const everyDoor = Array.from({ length: DOOR_COUNT }, (_, at) => at)

function door(at: number): { path: string; body: Record<string, unknown> } {
  const [path, body] = doors()[at] ?? ['', {}]
  return { path, body }
}

describe.each(everyDoor)('bad input at door %d', (at) => {
  it('has no body', async () => {
    expectRefusal(await sedge.post(door(at).path), 'BODY_DOES_NOT_FIT')
  })

  it.each([
    ['an empty object', {}], ['a list', []], ['an unknown key', { nonsense: true }],
  ])('is %s', async (_name, sent) => {
    const { path, body } = door(at)
    const full = 'nonsense' in sent ? { ...body, ...sent } : sent
    const { faults } = expectRefusal(await sedge.post(path, full), 'BODY_DOES_NOT_FIT')
    expect(faults?.length).toBeGreaterThan(0)
  })

  it.each(['null', '7', '"words"', 'true'])('is the bare JSON value %s', async (text) => {
    const reply = await sedge.post(door(at).path).set('content-type', 'application/json').send(text)
    expectRefusal(reply, 'BROKEN_JSON')
  })

  it('has the wrong type in each of its fields', async () => {
    const { path, body } = door(at)
    for (const key of Object.keys(body)) {
      for (const wrong of [12.5, -1, true, ['x'], { $gt: '' }, null, '']) {
        if (key === 'node' && wrong === null) continue
        const reply = await sedge.post(path, { ...body, [key]: wrong })
        expect([key, wrong, reply.status]).toEqual([key, wrong, 400])
        const { faults } = expectRefusal(reply, 'BODY_DOES_NOT_FIT')
        expect(faults?.map((fault) => fault.at.split('.')[0])).toContain(key)
      }
    }
  })

  it.each([
    ['broken JSON', '{"words": "help"'], ['two values', '{} {}'], ['a comment', '// hi'], ['NUL in text', '{"words":"a\\u0000b"}'],
  ])('is %s', async (_name, text) => {
    const reply = await sedge.post(door(at).path).set('content-type', 'application/json').send(text)
    expectRefusal(reply, 'BROKEN_JSON')
    expect(reply.text).not.toContain('help')
  })

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/xml'])(
    'says it is %s', async (type) => {
      const { path, body } = door(at)
      expectRefusal(await sedge.post(path).set('content-type', type).send(JSON.stringify(body)), 'NOT_JSON')
    })

  it('is in a character set or compression that is not taken', async () => {
    const { path, body } = door(at)
    const text = JSON.stringify(body)
    expectRefusal(
      await sedge.post(path).set('content-type', 'application/json; charset=latin1').send(text), 'NOT_JSON')
    expectRefusal(
      await sedge.post(path).set('content-type', 'application/json').set('content-encoding', 'gzip').send(text), 'NOT_JSON')
  })

  it('is larger than 64 kB', async () => {
    const { path, body } = door(at)
    expectRefusal(await sedge.post(path, { ...body, words: 'a'.repeat(70_000) }), 'TOO_LARGE')
  })

  it('has a text field of 20,000 characters', async () => {
    const { path, body } = door(at)
    for (const [key, value] of Object.entries(body)) {
      if (typeof value !== 'string') continue
      expectRefusal(await sedge.post(path, { ...body, [key]: '🌱a'.repeat(10_000) }), 'BODY_DOES_NOT_FIT')
    }
  })
})

describe('what was expected, in plain words', () => {
  const faultsOf = async (path: string, body: object) => expectRefusal(await sedge.post(path, body), 'BODY_DOES_NOT_FIT').faults

  it.each<[string, object, object[]]>([
    ['a missing part', {}, [{ at: 'words', expected: 'text; nothing was sent' }]],
    ['an empty text', { words: '' }, [{ at: 'words', expected: 'some text; it is empty' }]],
    ['a number for a text', { words: 7 }, [{ at: 'words', expected: 'text' }]],
    ['a text too long', { words: 'x'.repeat(5000) }, [{ at: 'words', expected: 'at most 4000 characters' }]],
    ['a part that is not taken', { words: 'x', colour: 'red' }, [{ at: '', expected: 'nothing called "colour"' }]],
    ['a short key', { words: 'x', key: 'abc' }, [{ at: 'key', expected: '22 to 64 random letters, digits, hyphens and underscores' }]],
  ])('tells of %s', async (_name, body, expected) => {
    expect(await faultsOf('/api/cases', body)).toEqual(expected)
  })

  it('names the values that are taken, and an example of a form', async () => {
    expect(await faultsOf(`/api/tickets/${ticket}/settle`, { text: 'x', outcome: { kind: 'lost' } }))
      .toEqual([{ at: 'outcome.kind', expected: 'one of: "problem", "not known", "not a plant problem"' }])
    expect(await faultsOf(`/api/cases/${view.link}/hand-over`, { revision: 0.5, contact: { email: 'x', phone: 'ring' } })).toEqual([
      { at: 'revision', expected: 'a whole number' },
      { at: 'contact.email', expected: 'an email address, such as fern@garden.example' },
      { at: 'contact.phone', expected: 'digits, spaces, + - . x and brackets only' },
    ])
  })
})

describe('bytes that are no text', () => {
  // 0xff never stands in UTF-8; a lone 0xc3 begins a letter that does not come (RFC 3629, section 3).
  it.each([['a byte that UTF-8 never has', [0xff]], ['half a letter', [0xc3]], ['half a pair of UTF-16', [0xed, 0xa0, 0x80]]])('refuses %s', async (_name, bytes) => {
    const body = Buffer.concat([Buffer.from('{"words":"black spots '), Buffer.from(bytes), Buffer.from('"}')])
    const sent = supertest(world.app).post('/api/cases').set('content-type', 'application/json')
    sent.write(body)
    expectRefusal(await sent, 'UNREADABLE_TEXT')
  })
})

describe('unknown things', () => {
  it.each(['x', 'x'.repeat(31), 'x'.repeat(33), 'x'.repeat(32), '%F0%9F%8C%B1', '..%2f..%2fetc', `${'x'.repeat(31)}'`])(
    'finds no case at the link %s', async (link) => {
      for (const path of [`/api/cases/${link}`]) expectRefusal(await supertest(world.app).get(path), 'CASE_NOT_FOUND')
      expectRefusal(
        await supertest(world.app).post(`/api/cases/${link}/carry-on`).send({ revision: 0 }), 'CASE_NOT_FOUND')
    })

  it.each(['0', '999', '999999999999', '1e3', '-1', 'one', '9'.repeat(13)])('finds no ticket numbered %s', async (number) => {
    expectRefusal(await sedge.get(`/api/tickets/${number}`), 'TICKET_NOT_FOUND')
    expectRefusal(await sedge.post(`/api/tickets/${number}/take`), 'TICKET_NOT_FOUND')
  })

  it.each(['triffid', 'Lettuce', '__proto__', 'constructor', '%00'])('finds no plant called %s', async (host) => {
    expectRefusal(await supertest(world.app).get(`/api/guide/hosts/${host}/complaints`), 'HOST_NOT_FOUND')
    expectRefusal(await sedge.get(`/api/guide/hosts/${host}/problems`), 'HOST_NOT_FOUND')
  })

  it('takes no plant, node, check, answer, district or problem that the guide does not have', async () => {
    const path = `/api/cases/${view.link}`
    const post = (address: string, body: object) => supertest(world.app).post(address).send(body)
    expectRefusal(await post(`${path}/place`, { revision: 0, host: 'triffid', node: null }), 'UNKNOWN_HOST')
    expectRefusal(await post(`${path}/place`, { revision: 0, host: 'lettuce', node: 'attic' }), 'UNKNOWN_NODE')
    expectRefusal(await post(`${path}/answers`, { revision: 0, check: 'leaf-song', answer: 'la' }), 'UNKNOWN_CHECK')
    expectRefusal(await post(`${path}/answers`, { revision: 0, check: 'constructor', answer: 'la' }), 'UNKNOWN_CHECK')
    const refused = expectRefusal(
      await post(`${path}/answers`, { revision: 0, check: 'plant-part', answer: '<script>alert(1)</script>' }), 'UNKNOWN_ANSWER')
    expect(refused.detail).toContain('"<script>alert(1)</script>"')
    expectRefusal(await post('/api/cases', { words: 'help', district: 'nowhere' }), 'UNKNOWN_DISTRICT')
    expectRefusal(await sedge.post(`/api/tickets/${ticket}/settle`, {
      text: 'x', outcome: { kind: 'problem', problem: 'wilt-of-doom' },
    }), 'UNKNOWN_PROBLEM')
  })

  it('refuses a contact that is none', async () => {
    const path = `/api/cases/${view.link}/hand-over`
    for (const contact of [{ email: 'not an address' }, { phone: 'ring me' }, { name: 7 }, { fax: '1' }, 'me']) {
      expectRefusal(await supertest(world.app).post(path).send({ revision: 0, contact }), 'BODY_DOES_NOT_FIT')
    }
  })

  it('shows the case as it stands to a sender with an old revision', async () => {
    const document = expectRefusal(
      await supertest(world.app).post(`/api/cases/${view.link}/words`).send({ revision: 5, words: 'more' }), 'STALE_REVISION')
    expect(document.case).toEqual(view)
  })

  it('takes no state of tickets that there is not', async () => {
    for (const query of ['state=lost', 'state=waiting&state=taken', 'state[]=waiting&state=x']) {
      expectRefusal(await sedge.get(`/api/tickets?${query}`), 'QUERY_DOES_NOT_FIT')
    }
  })
})

describe('addresses and methods', () => {
  it.each(['/nothing', '/api', '/api/', '/api/nothing', '/api/cases/x/y/z', '/secret.txt', '/assets/none.js',
    '/assets/../secret.txt', '/assets/%2e%2e/secret.txt', '/assets/', '/demo.html', '/.git/config'])('finds nothing at %s', async (path) => {
    expectRefusal(await supertest(world.app).get(path), 'NO_SUCH_PLACE')
  })

  it('cannot read an address that is not UTF-8', async () => {
    expectRefusal(await supertest(world.app).get('/api/cases/%E0%A4%A'), 'BAD_REQUEST')
  })

  it('says which methods an address takes', async () => {
    const reply = await supertest(world.app).delete(`/api/cases/${view.link}`)
    expect(expectRefusal(reply, 'WRONG_METHOD').detail).toContain('it takes GET')
    expect(reply.headers['allow']).toBe('GET')
    expectRefusal(await supertest(world.app).put('/api/cases').send({ words: 'x' }), 'WRONG_METHOD')
    expectRefusal(await supertest(world.app).get('/api/sign-in'), 'WRONG_METHOD')
  })
})
