import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CaseView, type SettleTicket, TicketView } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { askedCheck, BERRY_WORDS, first, LETTUCE_WORDS, lettuceCase, openWorld, type World } from './desk-world.js'

let world: World
let sedge: Member
let reed: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
  reed = await world.member('reed', 'specialist')
})
afterEach(() => world.close())

const later = (hours: number) => {
  world.now = new Date(world.now.getTime() + hours * 3_600_000)
}
const waiting = async () => (await world.desk.listTickets({ state: 'waiting' })).tickets

async function handedOver(words = LETTUCE_WORDS) {
  const { link } = await world.desk.openCase({ words }, null)
  await world.desk.handOver(link, { revision: 0 }, null)
  const row = (await waiting()).find((ticket) => ticket.words === words)
  return { link, ticket: row?.ticket ?? 'none' }
}

const ANSWER: SettleTicket = { text: 'Pick the spotted leaves off.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' } }

describe('desk: handing over', () => {
  it('opens one ticket with contact, note, differential and history', async () => {
    let view = await lettuceCase(world.desk)
    const asked = askedCheck(view)
    view = await world.desk.answerCheck(view.link, { revision: 1, check: asked.id, answer: first(asked.answers) }, null)
    const contact = { name: 'R. Ashdown', email: 'ashdown@larkmoor.example', phone: '555-0190' }
    view = await world.desk.handOver(view.link, { revision: 2, contact, note: 'a whole row of them' }, null)
    expect(CaseView.parse(view)).toEqual(view)
    expect(view).toMatchObject({
      revision: 3, step: { kind: expect.anything() },
      ticket: { state: 'waiting', contactGiven: true, reply: null, openedAt: world.now.toISOString() },
    })

    const row = first(await waiting())
    expect(row).toEqual({
      ticket: row.ticket, state: 'waiting', openedAt: world.now.toISOString(), words: LETTUCE_WORDS, host: 'lettuce',
      hostName: 'Lettuce', language: 'en', plantGuesses: [], district: null, urgent: false, why: 'Waiting 0 minutes', takenBy: null,
      waitsSince: world.now.toISOString(), dueAt: '2026-05-16T12:00:00.000Z', late: false, problemName: null,
    })
    const ticket = await world.desk.showTicket(row.ticket, sedge)
    expect(first(ticket.differential).probability).toBeLessThan(0.5)
    expect(TicketView.parse(ticket)).toEqual(ticket)
    expect(ticket).toMatchObject({ contactGiven: true, note: 'a whole row of them', case: { link: view.link, lines: view.lines } })
    expect(await world.desk.readContact(row.ticket, sedge)).toEqual({ contact, readBefore: [] })
    expect(ticket.history).toEqual([{ at: world.now.toISOString(), by: null, what: 'Handed over', kind: 'opened' }])
    expect(ticket.differential.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 6)
  })

  it('names the likeliest problem in the list from even odds on', async () => {
    let view = await lettuceCase(world.desk)
    for (const [check, answer] of [['leaf-underside', 'white or grey fuzz'], ['leaf-spots', 'pale or yellow patches with straight edges']] as const) {
      view = await world.desk.answerCheck(view.link, { revision: view.revision, check, answer }, null)
    }
    await world.desk.handOver(view.link, { revision: view.revision }, null)
    const row = first(await waiting())
    const lead = first((await world.desk.showTicket(row.ticket, sedge)).differential)
    expect(lead.probability).toBeGreaterThan(0.5)
    expect(row.problemName).toBe(lead.name)
  })

  it('changes nothing when it is repeated, from whatever revision and with whatever content', async () => {
    const { link } = await lettuceCase(world.desk)
    const once = await world.desk.handOver(link, { revision: 1, note: 'first' }, null)
    for (const revision of [0, 1, 2, 50]) {
      expect(await world.desk.handOver(link, { revision, note: 'other', contact: { name: 'X' } }, null)).toEqual(once)
    }
    const rows = await waiting()
    expect(rows).toHaveLength(1)
    expect(await world.desk.showTicket(first(rows).ticket, sedge)).toMatchObject({ note: 'first', contactGiven: false })
  })

  it('opens one ticket when it is sent twenty times at once', async () => {
    const { link } = await lettuceCase(world.desk)
    await Promise.all(Array.from({ length: 20 }, () => world.desk.handOver(link, { revision: 1 }, null)))
    expect(await waiting()).toHaveLength(1)
  })

  it('refuses an old revision while there is no ticket', async () => {
    const { link } = await lettuceCase(world.desk)
    await expect(world.desk.handOver(link, { revision: 0 }, null)).rejects.toMatchObject({ code: 'STALE_REVISION' })
    expect(await waiting()).toEqual([])
  })

  it('keeps neither contact nor note in the history that can never be erased', async () => {
    const { link } = await lettuceCase(world.desk)
    await world.desk.handOver(link, { revision: 1, note: 'ring the bell', contact: { phone: '555-0190' } }, null)
    const changes = await world.store.db.selectFrom('case_change').select('content').execute()
    const happenings = await world.store.db.selectFrom('ticket_change').select('what').execute()
    expect(JSON.stringify([changes, happenings])).not.toMatch(/bell|0190/)
  })

  it('takes empty contact fields as not given', async () => {
    const { link } = await lettuceCase(world.desk)
    const view = await world.desk.handOver(link, { revision: 1, contact: { name: '', phone: '' }, note: '' }, null)
    expect(view.ticket).toMatchObject({ contactGiven: false })
  })

  it('is allowed before the plant is settled', async () => {
    const { link } = await world.desk.openCase({ words: 'it is poorly' }, null)
    expect(await world.desk.handOver(link, { revision: 0 }, null)).toMatchObject({
      step: { kind: 'place' }, ticket: { state: 'waiting' },
    })
  })
})

describe('desk: the list of tickets', () => {
  it('puts urgent ones first and then the oldest, and says why each stands there', async () => {
    const { ticket: plain } = await handedOver('my lettuce has holes')
    later(3)
    const { ticket: young } = await handedOver('my lettuce is wilting')
    const { ticket: urgent } = await handedOver(BERRY_WORDS)
    later(1)
    const rows = await waiting()
    expect(rows.map(({ ticket }) => ticket)).toEqual([urgent, plain, young])
    expect(rows.map(({ why }) => why)).toEqual([
      expect.stringMatching(/^Red flag: /), 'Waiting 4 hours', 'Waiting 1 hour',
    ])
    expect(rows.map((row) => row.urgent)).toEqual([true, false, false])
  })

  it('says when one has waited longer than the region aims at', async () => {
    await handedOver()
    later(world.guide.region.targets.answerWithinHours + 1)
    expect(first(await waiting()).why).toMatch(/^Waiting 2 days, longer than the 48 hours aimed at$/)
  })

  it('makes a waiting ticket urgent when a red flag is heard afterwards, once', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.addWords(link, { revision: 1, words: BERRY_WORDS }, null)
    await world.desk.addWords(link, { revision: 2, words: 'the berries were red' }, null)
    const row = first(await waiting())
    expect(row).toMatchObject({ ticket, urgent: true, why: expect.stringMatching(/^Red flag: /) })
    const { history } = await world.desk.showTicket(ticket, sedge)
    expect(history.map(({ what }) => what)).toEqual(['Handed over', `Became urgent. ${row.why}`])
  })

  it('keeps the three states apart, and lists the last settled first', async () => {
    const one = await handedOver('my lettuce has holes')
    const two = await handedOver('my lettuce is wilting')
    const three = await handedOver('my lettuce is slimy')
    await world.desk.takeTicket(one.ticket, sedge)
    await world.desk.settleTicket(two.ticket, ANSWER, sedge)
    later(1)
    await world.desk.settleTicket(three.ticket, ANSWER, sedge)
    const states = await Promise.all((['waiting', 'taken', 'settled'] as const).map((state) => world.desk.listTickets({ state })))
    expect(states.map(({ tickets }) => tickets.map(({ ticket }) => ticket)))
      .toEqual([[], [one.ticket], [three.ticket, two.ticket]])
    expect(first(states[2]?.tickets ?? []).why).toBe('Settled on 2026-05-14')
  })
})

describe('desk: taking a ticket', () => {
  it('gives it to one of two, names who has it to the other, and takes a repeat calmly', async () => {
    const { ticket } = await handedOver()
    const taken = await world.desk.takeTicket(ticket, sedge)
    expect(taken).toMatchObject({ state: 'taken', takenBy: 'sedge' })
    await expect(world.desk.takeTicket(ticket, reed))
      .rejects.toMatchObject({ code: 'TICKET_TAKEN', facts: { words: { who: 'sedge' } } })
    expect(await world.desk.takeTicket(ticket, sedge)).toEqual(taken)
    expect(taken.history.map(({ by, what }) => [by, what])).toEqual([[null, 'Handed over'], ['sedge', 'Taken']])
  })

  it('gives it to exactly one of many who take it at once', async () => {
    const { ticket } = await handedOver()
    const people = await Promise.all(['ash', 'box', 'elm', 'fir', 'yew'].map((name) => world.member(name, 'specialist')))
    const outcomes = await Promise.allSettled(people.map((who) => world.desk.takeTicket(ticket, who)))
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  })

  it('finds no ticket that was never opened', async () => {
    await expect(world.desk.takeTicket('999', sedge)).rejects.toMatchObject({ code: 'TICKET_NOT_FOUND' })
    await expect(world.desk.showTicket('999999999999', sedge)).rejects.toMatchObject({ code: 'TICKET_NOT_FOUND' })
  })
})

describe('desk: settling a ticket', () => {
  it('gives the asker the specialist\'s answer by the link', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.takeTicket(ticket, sedge)
    const settled = await world.desk.settleTicket(ticket, ANSWER, sedge)
    expect(settled).toMatchObject({ state: 'settled', takenBy: 'sedge' })
    const problem = world.guide.problems.find(({ id }) => id === 'lettuce-downy-mildew')
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({
      state: 'settled',
      reply: {
        text: ANSWER.text, problem: 'lettuce-downy-mildew', problemName: problem?.name, outcome: 'problem',
        at: world.now.toISOString(),
      },
    })
  })

  it('takes a waiting ticket on the way', async () => {
    const { ticket } = await handedOver()
    const settled = await world.desk.settleTicket(ticket, { text: 'We do not know.', outcome: { kind: 'not known' } }, reed)
    expect(settled.history.map(({ what }) => what)).toEqual(['Handed over', 'Taken', 'Settled'])
    expect(settled.takenBy).toBe('reed')
  })

  it('writes down the case\'s revision and the guide that the specialist had before them', async () => {
    const { ticket } = await handedOver()
    await world.desk.settleTicket(ticket, ANSWER, sedge)
    const rows = await world.store.db.selectFrom('ticket_change').select('what').execute()
    expect(rows.map(({ what }) => JSON.parse(what) as unknown))
      .toContainEqual({ kind: 'settled', revision: 1, guide: world.guide.hash, outcome: 'problem' })
  })

  it('takes the same answer again and refuses another', async () => {
    const { link, ticket } = await handedOver()
    const settled = await world.desk.settleTicket(ticket, ANSWER, sedge)
    expect(await world.desk.settleTicket(ticket, ANSWER, sedge)).toEqual(settled)
    await expect(world.desk.settleTicket(ticket, { ...ANSWER, text: 'Something else.' }, sedge))
      .rejects.toMatchObject({ code: 'TICKET_SETTLED' })
    await expect(world.desk.settleTicket(ticket, { ...ANSWER, outcome: { kind: 'not known' } }, reed))
      .rejects.toMatchObject({ code: 'TICKET_SETTLED' })
    await expect(world.desk.takeTicket(ticket, reed)).rejects.toMatchObject({ code: 'TICKET_SETTLED' })
    expect((await world.desk.showCase(link, null)).ticket?.reply?.text).toBe(ANSWER.text)
  })

  it('is refused to whoever does not have the ticket', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.takeTicket(ticket, sedge)
    await expect(world.desk.settleTicket(ticket, ANSWER, reed))
      .rejects.toMatchObject({ code: 'TICKET_TAKEN', facts: { words: { who: 'sedge' } } })
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ state: 'taken', reply: null })
  })

  it('refuses a problem that the guide does not have and leaves the ticket waiting', async () => {
    const { ticket } = await handedOver()
    await expect(world.desk.settleTicket(ticket, { text: 'x', outcome: { kind: 'problem', problem: 'wilt-of-doom' } }, sedge))
      .rejects.toMatchObject({ code: 'UNKNOWN_PROBLEM' })
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'waiting', takenBy: null })
  })
})
