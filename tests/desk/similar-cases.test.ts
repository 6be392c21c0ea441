import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { SimilarCases, type SettleTicket } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { first, openWorld, type World } from './desk-world.js'

let world: World
let sedge: Member
let reed: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
  reed = await world.member('reed', 'volunteer')
})
afterEach(() => world.close())

const MILDEW: SettleTicket = { text: 'Pick the spotted leaves off.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' } }
const UNKNOWN: SettleTicket = { text: 'We could not tell.', outcome: { kind: 'not known' } }

async function lettuce(answers: Readonly<Record<string, string>>, district?: string) {
  let view = await world.desk.openCase({ words: 'something is wrong with the leaves of my lettuce, they look bad', ...(district === undefined ? {} : { district }) }, null)
  view = await world.desk.settlePlace(view.link, { revision: view.revision, host: 'lettuce', node: null }, null)
  for (const [check, answer] of Object.entries(answers)) view = await world.desk.answerCheck(view.link, { revision: view.revision, check, answer }, null)
  return view
}

async function settled(answers: Readonly<Record<string, string>>, as: SettleTicket, district?: string): Promise<string> {
  const { link, revision } = await lettuce(answers, district)
  await world.desk.handOver(link, { revision }, null)
  const { ticket } = first((await world.desk.listTickets({ state: 'waiting' })).tickets)
  await world.desk.settleTicket(ticket, as, sedge)
  return ticket
}

const FUZZ = { 'leaf-underside': 'white or grey fuzz', 'leaf-spots': 'pale or yellow patches with straight edges' }

describe('desk: settled cases like this one', () => {
  it('puts the case first that has the most answers in common, with what it was', async () => {
    const other = await settled({ 'leaf-underside': 'nothing to see' }, UNKNOWN)
    const alike = await settled(FUZZ, MILDEW)
    const { link } = await lettuce(FUZZ)
    const found = await world.desk.similarCases(link, sedge)
    expect(SimilarCases.parse(found)).toEqual(found)
    expect(found.hostName).toBe('Lettuce')
    expect(found.cases.map(({ ticket, problemName, outcome, different }) => ({ ticket, problemName, outcome, different }))).toEqual([
      { ticket: alike, problemName: 'Lettuce downy mildew', outcome: 'problem', different: 0 },
      { ticket: other, problemName: null, outcome: 'not known', different: 1 },
    ])
    expect(first(found.cases).same.map(({ answer }) => answer).sort()).toEqual(Object.values(FUZZ).sort())
  })

  it('counts no answer of someone who was not sure', async () => {
    await settled({ 'leaf-underside': 'not sure' }, UNKNOWN)
    const { link } = await lettuce({ 'leaf-underside': 'not sure' })
    expect(first((await world.desk.similarCases(link, sedge)).cases)).toMatchObject({ same: [], different: 0 })
  })

  it('keeps to the district of the case, and to the last half year', async () => {
    await settled(FUZZ, MILDEW, 'eastmere')
    const here = await lettuce(FUZZ, 'holt-fen')
    expect((await world.desk.similarCases(here.link, sedge)).cases).toEqual([])
    const there = await lettuce(FUZZ, 'eastmere')
    expect((await world.desk.similarCases(there.link, sedge)).cases).toHaveLength(1)
    world.now = new Date('2026-12-14T12:00:00.000Z')
    const late = await lettuce(FUZZ, 'eastmere')
    expect(await world.desk.similarCases(late.link, sedge)).toMatchObject({ cases: [], since: '2026-06-14' })
  })

  it('leaves out the case itself, tickets still open, and answers taken back', async () => {
    const ticket = await settled(FUZZ, MILDEW)
    const { case: own } = await world.desk.showTicket(ticket, sedge)
    expect((await world.desk.similarCases(own.link, sedge)).cases).toEqual([])
    const { link } = await lettuce(FUZZ)
    await world.desk.reopenTicket(ticket, sedge)
    expect((await world.desk.similarCases(link, sedge)).cases).toEqual([])
  })

  it('shows a volunteer what was seen and what it was, and no ticket', async () => {
    await settled(FUZZ, MILDEW)
    const { link } = await lettuce(FUZZ)
    const found = await world.desk.similarCases(link, reed)
    expect(found.cases).toHaveLength(1)
    expect(first(found.cases).ticket).toBeNull()
    expect(JSON.stringify(found)).not.toContain('something is wrong')
  })

  it('finds nothing before the plant is settled', async () => {
    await settled(FUZZ, MILDEW)
    const { link } = await world.desk.openCase({ words: 'it looks bad' }, null)
    expect(await world.desk.similarCases(link, sedge)).toMatchObject({ hostName: null, cases: [] })
  })
})
