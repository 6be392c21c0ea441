import { randomBytes } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { SettleTicket, WeekCounts } from '../../../shared/index.js'
import { eraseAsker, type Member } from '../../../src/desk/index.js'
import { openWorld, testKeys, type World } from '../desk-world.js'
import { concludedCase, ticketOf } from './season-cases.js'

const SPOT = { host: 'rose', problem: 'rose-black-spot', district: 'holt-fen' }
const as = (problem: string): SettleTicket => ({ text: 'It is what it is.', outcome: { kind: 'problem', problem } })

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

/** What is counted, in short. */
async function counted(): Promise<string[]> {
  const { counts }: WeekCounts = await world.desk.weekCounts({})
  return counts.map(({ problem, host, district, week, reports, cases, settled }) => (
    `${problem} on ${host} in ${district ?? 'no district'}, ${week}: ${settled} settled of ${cases}, ${settled === cases ? reports : 'by weight'}`))
}

describe('what the season counts', () => {
  it('is a concluded case by its probability, and no case that is still open', async () => {
    const view = await concludedCase(world, SPOT)
    const { counts } = await world.desk.weekCounts({})
    expect(counts).toMatchObject([{ problem: 'rose-black-spot', host: 'rose', district: 'holt-fen', week: '2026-W20', cases: 1, settled: 0 }])
    if (view.step.kind !== 'conclude') throw new Error('It was concluded.')
    expect(counts[0]?.reports).toBeCloseTo(view.step.card.probability, 10)

    const [line] = view.lines
    await world.desk.takeBack(view.link, { revision: view.revision, check: line?.check.id ?? '' }, null)
    for (const { check } of view.lines.slice(1)) {
      const now = await world.desk.showCase(view.link, null)
      await world.desk.takeBack(view.link, { revision: now.revision, check: check.id }, null)
    }
    expect(await counted()).toEqual([])
  })

  it('is no job that was asked for: it tells of nothing that plants suffer from', async () => {
    await concludedCase(world, { host: 'pruning', problem: 'job-prune-rose', district: 'holt-fen' })
    expect(await counted()).toEqual([])
  })

  it('is a settled case once, as what it was settled and as nothing else', async () => {
    const ticket = await ticketOf(world.desk, await concludedCase(world, SPOT))
    await world.desk.settleTicket(ticket, as('rose-rust'), sedge)
    expect(await counted()).toEqual(['rose-rust on rose in holt-fen, 2026-W20: 1 settled of 1, 1'])
    await world.desk.amendTicket(ticket, { text: 'No.', outcome: { kind: 'not known' } }, sedge)
    expect(await counted()).toEqual([])
    await world.desk.amendTicket(ticket, as('rose-black-spot'), sedge)
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 1 settled of 1, 1'])
    await world.desk.reopenTicket(ticket, sedge)
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 1, by weight'])
  })

  it('is one of two tickets that were merged, and both once they are taken apart', async () => {
    const [one, other] = [await ticketOf(world.desk, await concludedCase(world, SPOT)), await ticketOf(world.desk, await concludedCase(world, SPOT))]
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 2, by weight'])
    await world.desk.mergeTicket(other, { ticket: one }, sedge)
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 1, by weight'])
    await world.desk.unmergeTicket(other, sedge)
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 2, by weight'])
  })

  it('is an asker’s repeats once, and stays so when the asker is erased', async () => {
    const one = await concludedCase(world, SPOT)
    const other = await concludedCase(world, SPOT)
    await ticketOf(world.desk, one, 'fern@larkmoor.example')
    const ticket = await ticketOf(world.desk, other, 'Fern@larkmoor.example')
    await ticketOf(world.desk, await concludedCase(world, SPOT), 'moss@larkmoor.example')
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 2, by weight'])

    const room = { db: world.store.db, now: () => world.now, randomBytes: (count: number) => randomBytes(count), keys: testKeys() }
    expect(await eraseAsker(room, one.link)).toBe(true)
    const rows = await world.store.db.selectFrom('season_report').select(['asker', 'is_repeat']).orderBy('case_id').execute()
    expect(rows).toEqual([{ asker: null, is_repeat: 0 }, { asker: null, is_repeat: 1 }, { asker: expect.any(Number) as number, is_repeat: 0 }])
    await world.desk.settleTicket(ticket, as('rose-black-spot'), sedge)
    expect(await counted()).toEqual(['rose-black-spot on rose in holt-fen, 2026-W20: 0 settled of 2, by weight'])
  })

  it('is no call that was only practised', async () => {
    const worked = world.guide.casebook.find(({ ends }) => ends.kind === 'problem')
    const opened = await world.desk.openCase({ words: worked?.words ?? '', practice: worked?.id ?? '', district: 'holt-fen' }, sedge)
    const host = world.guide.hosts[worked?.host ?? -1]?.id ?? opened.place.hosts[0]?.host ?? 'rose'
    let view = await world.desk.settlePlace(opened.link, { revision: opened.revision, host, node: null }, sedge)
    for (let turn = 0; view.step.kind === 'ask' && turn < 30; turn++) {
      const answer = worked?.findings.get(world.guide.checkNumbers.get(view.step.check.id) ?? -1) ?? 'not sure'
      view = await world.desk.answerCheck(view.link, { revision: view.revision, check: view.step.check.id, answer }, sedge)
    }
    expect(await counted()).toEqual([])
  })

  it('is the same when every case is counted anew, and nothing is news then', async () => {
    await ticketOf(world.desk, await concludedCase(world, SPOT))
    const before = await world.desk.weekCounts({})
    await world.store.db.deleteFrom('season_report').execute()
    expect(await counted()).toEqual([])
    expect(await world.desk.recountSeason()).toBe(1)
    expect(await world.desk.weekCounts({})).toEqual(before)
  })
})

describe('the season of a problem', () => {
  it('stands beside the same weeks of earlier years', async () => {
    world.now = new Date('2025-05-14T12:00:00.000Z')
    await concludedCase(world, SPOT)
    world.now = new Date('2026-05-14T12:00:00.000Z')
    const ticket = await ticketOf(world.desk, await concludedCase(world, SPOT))
    await world.desk.settleTicket(ticket, as('rose-black-spot'), sedge)
    const season = await world.desk.showSeason({ district: 'holt-fen' })
    expect(season).toMatchObject({ until: '2026-W20', from: '2025-W20', recordsFrom: '2025-W20' })
    const last = season.problems[0]?.weeks.at(-1)
    expect(last).toMatchObject({ week: '2026-W20', reports: 1, settled: 1, usual: { years: 1 } })
    expect(last?.usual?.high).toBeGreaterThan(5)
    expect(season.problems[0]?.rise).toMatchObject({ method: 'C2', unusual: false })
    expect((await world.desk.showSeason({ district: 'eastmere' })).problems).toEqual([])
    await expect(world.desk.showSeason({ district: 'nowhere' })).rejects.toMatchObject({ code: 'UNKNOWN_DISTRICT' })
  })
})
