import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  CallList, CaseView, ComplaintRows, HostRows, Person, ProblemRows, RegionView, Suggestions, TicketContact, TicketList, TicketView,
} from '../../shared/index.js'
import { type HttpWorld, openHttpWorld, problemOf } from './http-world.js'

describe('one case from the question to the specialist\'s answer', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld()
  })
  afterAll(() => world.close())

  const get = (path: string) => supertest(world.app).get(path)
  const post = (path: string, body: object) => supertest(world.app).post(path).send(body)

  it('walks the asker\'s side, in replies that fit the wire', async () => {
    const region = RegionView.parse((await get('/api/region').expect(200)).body)
    expect(region.districts.map(({ district }) => district)).toContain('eastmere')
    const { hosts } = HostRows.parse((await get('/api/guide/hosts').expect(200)).body)
    expect(hosts.map(({ host }) => host)).toContain('lettuce')
    const { complaints } = ComplaintRows.parse((await get('/api/guide/hosts/lettuce/complaints').expect(200)).body)
    expect(complaints.every(({ phrases }) => phrases.length > 0)).toBe(true)

    const words = 'pale patches on my lettuce leaves and white fuzz under them'
    const suggested = Suggestions.parse((await post('/api/suggest', { words }).expect(200)).body)
    const opened = CaseView.parse((await post('/api/cases', { words, district: 'eastmere' }).expect(201)).body)
    expect(opened.place.hosts).toEqual(suggested.hosts)
    expect(opened.place.entries).toEqual(suggested.entries)

    const at = `/api/cases/${opened.link}`
    let view = CaseView.parse((await post(`${at}/place`, { revision: 0, host: 'lettuce', node: null }).expect(200)).body)
    const answers = ['leaves', 'spots or blotches', 'pale or yellow patches with straight edges', 'white or grey fuzz']
    for (let turn = 0; view.step.kind === 'ask' && turn < 12; turn++) {
      const { id, answers: listed } = view.step.check
      const answer = listed.find((label) => answers.includes(label)) ?? 'not sure'
      view = CaseView.parse((await post(`${at}/answers`, { revision: view.revision, check: id, answer }).expect(200)).body)
    }
    expect(['conclude', 'hand-over']).toContain(view.step.kind)
    expect(view.lines.length).toBeGreaterThan(2)

    const body = { revision: view.revision, contact: { email: 'ashdown@larkmoor.example' }, note: 'the whole bed' }
    view = CaseView.parse((await post(`${at}/hand-over`, body).expect(200)).body)
    expect(view.ticket).toMatchObject({ state: 'waiting', contactGiven: true })

    const sedge = await world.signedIn('sedge', 'specialist')
    const alder = await world.signedIn('alder', 'administrator')
    const { tickets: [row] } = TicketList.parse((await sedge.get('/api/tickets').expect(200)).body)
    expect(row).toMatchObject({ words, hostName: 'Lettuce', district: 'eastmere' })
    const path = `/api/tickets/${row?.ticket ?? ''}`
    expect(TicketView.parse((await sedge.get(path).expect(200)).body)).toMatchObject({
      note: 'the whole bed', contactGiven: true, case: { link: opened.link },
    })
    expect(TicketContact.parse((await sedge.get(`${path}/contact`).expect(200)).body))
      .toEqual({ contact: { email: 'ashdown@larkmoor.example' }, readBefore: [] })
    TicketView.parse((await sedge.post(`${path}/take`).expect(200)).body)
    const refused = problemOf(await alder.post(`${path}/take`).expect(409))
    expect(refused).toMatchObject({ code: 'TICKET_TAKEN', detail: 'sedge has this ticket. Nothing was changed.' })

    const { problems } = ProblemRows.parse((await sedge.get('/api/guide/hosts/lettuce/problems').expect(200)).body)
    const mildew = problems.find(({ problem }) => problem === 'lettuce-downy-mildew')
    expect(mildew?.advice.length).toBeGreaterThan(50)
    const { problems: all } = ProblemRows.parse((await sedge.get('/api/guide/hosts/any/problems').expect(200)).body)
    expect(all.length).toBeGreaterThan(problems.length)

    const answer = { text: mildew?.advice, outcome: { kind: 'problem', problem: mildew?.problem } }
    TicketView.parse((await sedge.post(`${path}/settle`, answer).expect(200)).body)
    TicketView.parse((await sedge.post(`${path}/settle`, answer).expect(200)).body)
    expect(problemOf(await sedge.post(`${path}/settle`, { ...answer, text: 'no' }).expect(409)).code).toBe('TICKET_SETTLED')

    view = CaseView.parse((await get(at).expect(200)).body)
    expect(view.ticket?.reply).toMatchObject({ text: mildew?.advice, problemName: mildew?.name, outcome: 'problem' })
  })

  it('keeps a volunteer\'s call on their desk until they close it', async () => {
    const willow = await world.signedIn('willow', 'volunteer')
    expect(Person.parse((await willow.get('/api/me').expect(200)).body)).toEqual({ name: 'willow', role: 'volunteer' })
    const { link } = CaseView.parse((await willow.post('/api/cases', { words: 'holes in my hosta' }).expect(201)).body)
    const noted = CaseView.parse((await willow.post(`/api/cases/${link}/notes`, { revision: 0, text: 'rings from work' })).body)
    expect(noted.notes).toEqual([{ text: 'rings from work', at: expect.any(String) }])
    expect(CallList.parse((await willow.get('/api/calls').expect(200)).body).calls.map((call) => call.link)).toEqual([link])
    expect(CallList.parse((await willow.post(`/api/calls/${link}/close`).expect(200)).body).calls).toEqual([])
  })

  it('applies one of twenty answers that arrive at once', async () => {
    const opened = CaseView.parse((await post('/api/cases', { words: 'my rose has black spots' }).expect(201)).body)
    const replies = await Promise.all(Array.from({ length: 20 }, (_, turn) => (
      post(`/api/cases/${opened.link}/words`, { revision: 0, words: `word ${turn}` }))))
    expect(replies.map(({ status }) => status).sort()).toEqual([200, ...Array.from({ length: 19 }, () => 409)])
    const now = CaseView.parse((await get(`/api/cases/${opened.link}`)).body)
    expect(now.revision).toBe(1)
    for (const reply of replies) {
      if (reply.status === 409) expect(problemOf(reply).case).toEqual(now)
    }
  })
})
