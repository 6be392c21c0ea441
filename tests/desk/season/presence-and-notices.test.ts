import { randomBytes } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createDesk, type Desk, type MailPlace, type Member } from '../../../src/desk/index.js'
import { openStore } from '../../../src/store/index.js'
import { testStore } from '../../store/test-store.js'
import { folderHome } from '../../../src/photos/index.js'
import { openWorld, testKeys, type World } from '../desk-world.js'
import { concludedCase, ticketOf, toldCase } from './season-cases.js'

const BLIGHT = { host: 'tomato', problem: 'tomato-late-blight', district: 'holt-fen' }
const isBlight = { text: 'It is late blight.', outcome: { kind: 'problem' as const, problem: 'tomato-late-blight' } }
const isNot = { text: 'It is not.', outcome: { kind: 'not known' as const } }
/** Nothing is sent: the letters stay in the outbox. */
const mail: MailPlace = { publicUrl: 'https://helpline.example', mailer: { send: () => Promise.reject(new Error('not asked to send')) } as never }

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld(undefined, mail)
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

async function letters(): Promise<string[]> {
  const rows = await world.store.db.selectFrom('outbox').select('mail_key').where('mail_key', 'like', 'first report:%').orderBy('id').execute()
  return rows.map(({ mail_key: key }) => key)
}

/** A case that only a specialist can settle. */
async function openTicket(desk: Desk = world.desk): Promise<string> {
  return ticketOf(desk, await toldCase(world, BLIGHT))
}

describe('presence', () => {
  it('keeps every word, and the last one stands', async () => {
    await world.desk.setPresence({ problem: 'tomato-late-blight', district: 'eastmere', state: 'not found', why: 'Nothing so far.', on: '2026-04-01' }, sedge)
    const body = { problem: 'tomato-late-blight', district: 'eastmere', state: 'present' as const, why: 'Ticket 4.' }
    await world.desk.setPresence(body, sedge)
    await world.desk.setPresence(body, sedge)
    const { rows } = await world.desk.showPresence()
    const of = (district: string) => rows.find((row) => row.problem === 'tomato-late-blight' && row.district === district)
    expect(of('eastmere')).toMatchObject({
      state: 'present', besideName: null,
      history: [{ state: 'present', on: '2026-05-14', by: 'sedge', why: 'Ticket 4.' }, { state: 'not found', on: '2026-04-01', by: 'sedge', why: 'Nothing so far.' }],
    })
    expect(of('holt-fen')).toMatchObject({ state: 'found nearby', besideName: 'Eastmere', history: [] })
    expect(of('upper-carse')).toMatchObject({ state: null })
  })

  it('is refused for what is not watched, nowhere, or still to come', async () => {
    const body = { problem: 'tomato-late-blight', district: 'eastmere', state: 'present' as const, why: 'Seen.' }
    await expect(world.desk.setPresence({ ...body, problem: 'rose-black-spot' }, sedge)).rejects.toMatchObject({ code: 'NOT_WATCHED' })
    await expect(world.desk.setPresence({ ...body, problem: 'no-such' }, sedge)).rejects.toMatchObject({ code: 'UNKNOWN_PROBLEM' })
    await expect(world.desk.setPresence({ ...body, district: 'nowhere' }, sedge)).rejects.toMatchObject({ code: 'UNKNOWN_DISTRICT' })
    await expect(world.desk.setPresence({ ...body, on: '2026-05-15' }, sedge)).rejects.toMatchObject({ code: 'DAY_TO_COME' })
  })
})

describe('the first report of a watch problem', () => {
  it('is told once a district and year, on the bench and by mail', async () => {
    const ticket = await openTicket()
    await world.desk.settleTicket(ticket, isBlight, sedge)
    await world.desk.settleTicket(await openTicket(), isBlight, sedge)
    const { notices } = await world.desk.showNotices()
    expect(notices).toMatchObject([{ problem: 'tomato-late-blight', districtName: 'Holt Fen', year: 2026, ticket, stands: true, basis: 'settled', seen: null }])
    expect(await letters()).toEqual([expect.stringMatching(/^first report:tomato-late-blight\/holt-fen:2026 \d+$/)])

    const [notice] = notices
    await world.desk.seeNotice(notice?.notice ?? '', sedge)
    const seen = await world.desk.seeNotice(notice?.notice ?? '', await world.member('rush', 'specialist'))
    expect(seen.notices[0]?.seen).toEqual({ by: 'sedge', at: world.now.toISOString() })
    await expect(world.desk.seeNotice('99', sedge)).rejects.toMatchObject({ code: 'NOTICE_NOT_FOUND' })
    world.now = new Date('2027-05-14T12:00:00.000Z')
    await world.desk.settleTicket(await openTicket(), isBlight, sedge)
    expect((await world.desk.showNotices()).notices.map(({ year }) => year)).toEqual([2027, 2026])
  })

  it('is told anew when the earlier one turned out to be something else', async () => {
    const ticket = await openTicket()
    await world.desk.settleTicket(ticket, isBlight, sedge)
    await world.desk.amendTicket(ticket, isNot, sedge)
    expect((await world.desk.showNotices()).notices).toMatchObject([{ stands: false }])
    await world.desk.settleTicket(await openTicket(), isBlight, sedge)
    expect((await world.desk.showNotices()).notices.map(({ stands }) => stands)).toEqual([true, false])
    expect(await letters()).toHaveLength(2)
  })

  it('is told once when two processes learn of two at the same moment', async () => {
    const other = await openStore(await testStore(world.home))
    try {
      const desk = createDesk({
        db: other.db, listen: other.listen, guide: () => world.guide, photos: folderHome(world.home), mail, report: (fault) => { throw fault },
        clock: () => world.now, randomBytes: (count) => randomBytes(count), keys: testKeys(),
      })
      const tickets = [await openTicket(), await openTicket()]
      const settle = [() => world.desk.settleTicket(tickets[0] ?? '', isBlight, sedge), () => desk.settleTicket(tickets[1] ?? '', isBlight, sedge)]
      // SQLite's second writer waits for the first by standing still, which in one thread would keep the first from ending.
      if (world.store.name === 'SQLite') for (const one of settle) await one()
      else await Promise.all(settle.map((one) => one()))
      expect((await world.desk.showNotices()).notices).toHaveLength(1)
      expect(await letters()).toHaveLength(1)
    } finally {
      await other.close()
    }
  })
})

describe('what the season makes of a case', () => {
  it('is taken when the case is opened and stays, whatever is said later', async () => {
    const plain = await toldCase(world, BLIGHT)
    await world.desk.setPresence({ problem: 'tomato-late-blight', district: 'holt-fen', state: 'widespread', why: 'All over.' }, sedge)
    expect(await world.desk.showCase(plain.link, null)).toEqual(plain)

    const { link } = await toldCase(world, BLIGHT)
    const shown = JSON.stringify((await world.desk.showCase(link, null)).step)
    expect(shown).toContain('more likely here now: ')
    expect(shown).toContain('widespread in Holt Fen')
    const before = await world.desk.showCase(link, null)
    await world.desk.setPresence({ problem: 'tomato-late-blight', district: 'holt-fen', state: 'not found', why: 'A mistake.' }, sedge)
    expect(await world.desk.showCase(link, null)).toEqual(before)
  })

  it('is said on the bench and in the table of the district, with its reasons', async () => {
    await world.desk.setPresence({ problem: 'tomato-late-blight', district: 'holt-fen', state: 'present', why: 'Seen.' }, sedge)
    const view = await world.desk.showTicket(await openTicket(), sedge)
    expect(view.differential.find(({ problem }) => problem === 'tomato-late-blight')?.moved).toMatchObject({
      direction: 'more', words: expect.stringContaining('known to be in Holt Fen') as string,
    })
    const table = await world.desk.showPlausible('holt-fen')
    expect(table.problems.map(({ problem }) => problem)).toContain('tomato-late-blight')
    expect((await world.desk.showPlausible('upper-carse')).problems).toEqual([])
  })

  it('is nothing for a case without a district, and changes no answer there', async () => {
    const { problem, host } = BLIGHT
    const plain = await toldCase(world, { problem, host })
    await world.desk.setPresence({ problem, district: 'holt-fen', state: 'widespread', why: 'All over.' }, sedge)
    const other = await toldCase(world, { problem, host })
    expect(other.step).toEqual(plain.step)
  })

  it('is left out of what a concluded case counts for, so that reports do not breed reports', async () => {
    const spot = { host: 'rose', problem: 'rose-black-spot', district: 'holt-fen' }
    const plain = await concludedCase(world, spot)
    for (let turn = 0; turn < 6; turn++) await world.desk.settleTicket(await ticketOf(world.desk, await concludedCase(world, spot)), { text: 'So it is.', outcome: { kind: 'problem', problem: spot.problem } }, sedge)
    const raised = await concludedCase(world, spot)
    if (plain.step.kind !== 'conclude' || raised.step.kind !== 'conclude') throw new Error('Both were concluded.')
    expect(raised.step.why.moved?.direction).toBe('more')
    expect(raised.step.card.probability).toBeGreaterThan(plain.step.card.probability)
    const weights = await world.store.db.selectFrom('season_report').select('weight').where('basis', '=', 'concluded').orderBy('case_id').execute()
    expect(weights).toHaveLength(2)
    expect(weights[1]?.weight).toBeLessThan(raised.step.card.probability)
  })
})
