import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CaseView, Colleagues, KeptCases, KeptSuggestions, SettleReview, TicketContact, TicketList, TicketView } from '../../shared/index.js'
import { type Asker, type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'
import supertest from 'supertest'

let world: HttpWorld
let sedge: Asker
let reed: Asker
// One world for all: each test works on tickets of its own.
beforeAll(async () => {
  world = await openHttpWorld()
  sedge = await world.signedIn('sedge', 'specialist')
  reed = await world.signedIn('reed', 'specialist')
}, 180_000)
afterAll(() => world.close())

async function ticket(words = 'my lettuce is slimy') {
  const { link } = await openCase(world.app, words)
  await supertest(world.app).post(`/api/cases/${link}/hand-over`).send({ revision: 0, contact: { phone: '555-0190' } }).expect(200)
  const { tickets } = TicketList.parse((await sedge.get('/api/tickets?state=any').expect(200)).body)
  return { link, number: String(Math.max(...tickets.map((row) => Number(row.ticket)))) }
}

describe('the routes of a ticket\'s life', () => {
  it('go all the way in replies that fit the wire', async () => {
    const { link, number } = await ticket()
    const at = `/api/tickets/${number}`
    const move = async (path: string, body?: object, who = sedge) => TicketView.parse((await who.post(`${at}/${path}`, body).expect(200)).body)
    await move('take')
    await move('give-back')
    await move('hand-on', { to: 'sedge' }, reed)
    expect((await move('ask-back', { checks: ['leaf-underside'] })).state).toBe('asked back')
    const asked = CaseView.parse((await supertest(world.app).get(`/api/cases/${link}`)).body)
    expect(asked.ticket?.askedBack?.checks[0]?.check.id).toBe('leaf-underside')
    await supertest(world.app).post(`/api/cases/${link}/answers`).send({ revision: 1, check: 'leaf-underside', answer: 'not sure' }).expect(200)
    expect((await move('samples', { number: '12', packed: 'two leaves' })).state).toBe('sent as a sample')
    expect((await move('results', { number: '12', text: 'nothing found' })).state).toBe('taken')
    await move('notes', { text: 'ask again in June' })
    const outcome = { kind: 'problem', problem: 'lettuce-downy-mildew' }
    SettleReview.parse((await sedge.post(`${at}/review`, { outcome }).expect(200)).body)
    expect((await move('settle', { text: 'Mildew.', outcome, casebook: { words: 'slimy lettuce' }, suggest: ['entry phrase'] })).state).toBe('settled')
    const kept = async () => KeptCases.parse((await sedge.get('/api/casebook').expect(200)).body).cases
    expect(await kept()).toHaveLength(1)
    await move('amend', { text: 'We do not know.', outcome: { kind: 'not known' } }, reed)
    await move('reopen', undefined, reed)

    const other = await ticket('my lettuce is wilting')
    await move('link', { ticket: other.number })
    await move('unlink', { ticket: other.number })
    expect((await move('merge', { ticket: other.number }, reed)).mergedInto).toBe(other.number)
    expect((await move('unmerge')).state).toBe('waiting')
    TicketContact.parse((await sedge.get(`${at}/contact`).expect(200)).body)
    Colleagues.parse((await sedge.get('/api/colleagues').expect(200)).body)
    // What was kept from an answer that was changed is kept no more.
    expect(await kept()).toHaveLength(0)
    KeptSuggestions.parse((await sedge.get('/api/tree-suggestions').expect(200)).body)
  })

  it('say who has a ticket, or where it stands, when a move is not possible', async () => {
    const { number } = await ticket()
    const at = `/api/tickets/${number}`
    await sedge.post(`${at}/take`).expect(200)
    expect(problemOf(await reed.post(`${at}/give-back`).expect(409)).detail).toBe('sedge has this ticket. Nothing was changed.')
    expect(problemOf(await reed.post(`${at}/unmerge`).expect(409)))
      .toMatchObject({ code: 'TICKET_ELSEWHERE', detail: 'This ticket is taken, with sedge, so there is nothing to take apart now. Nothing was changed.' })
    await sedge.post(`${at}/ask-back`, { text: 'where?' }).expect(200)
    expect(problemOf(await sedge.post(`${at}/amend`, { text: 'x', outcome: { kind: 'not known' } }).expect(409)).detail)
      .toBe('This ticket is asked back, with sedge, so there is no answer to amend now. Nothing was changed.')
  })

  it.each([
    ['ask-back', {}], ['ask-back', { checks: 'leaf-underside' }], ['ask-back', { text: 'x'.repeat(4001) }], ['samples', { number: '', packed: 'x' }],
    ['results', { number: '1' }], ['hand-on', {}], ['notes', { text: '  ' }], ['merge', { ticket: 'one' }], ['settle', { text: 'x', outcome: { kind: 'problem' } }],
    ['settle', { text: 'x', outcome: { kind: 'not known' }, suggest: ['burn it'] }], ['review', {}],
  ])('refuse %s with %j and change nothing', async (path, body) => {
    const { number } = await ticket()
    const before = (await sedge.get(`/api/tickets/${number}`)).body as unknown
    expect(problemOf(await sedge.post(`/api/tickets/${number}/${path}`, body).expect(400)).code).toBe('BODY_DOES_NOT_FIT')
    expect((await sedge.get(`/api/tickets/${number}`)).body).toEqual(before)
  })

  it('search by what the address says, and refuse what does not fit', async () => {
    await ticket('my lettuce is quaggy')
    const found = async (query: string) => TicketList.parse((await sedge.get(`/api/tickets?${query}`).expect(200)).body).tickets.length
    expect(await found('')).toBeGreaterThan(0)
    expect(await found('state=open&words=quaggy&host=&from=2026-05-14&until=2026-05-14')).toBe(1)
    expect(await found('state=any&words=%25')).toBe(0)
    expect(await found(`words=${encodeURIComponent(`' or 1=1 --`)}`)).toBe(0)
    for (const query of ['state=lost', 'from=yesterday', `words=${'x'.repeat(201)}`]) {
      expect(problemOf(await sedge.get(`/api/tickets?${query}`).expect(400)).code).toBe('QUERY_DOES_NOT_FIT')
    }
  })
})
