import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Member } from '../../../src/desk/index.js'
import { keepInventedCounts } from '../../../src/store/index.js'
import { openWorld, type World } from '../desk-world.js'
import { concludedCase } from './season-cases.js'

/** The week of the worlds' present, 14 May 2026. */
const WEEK = '2026-W20'
const SPOT = { host: 'rose', problem: 'rose-black-spot' }

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

/** Keeps cases of a problem by district as if they had come this week. */
async function reported(cases: Readonly<Record<string, number>>, problem = SPOT.problem, week = WEEK): Promise<void> {
  await keepInventedCounts(world.store.db, Object.entries(cases).map(([district, count]) => (
    { problem, host: SPOT.host, district, week, reports: count, cases: count, settled: 0 })))
}

describe('the weekly note', () => {
  it('is drafted from the cases of its week, and nobody reads it before a specialist approves it', async () => {
    await concludedCase(world, { ...SPOT, district: 'holt-fen' })
    await reported({ 'holt-fen': 4, 'eastmere': 1 })
    const view = await world.desk.showNote()
    expect(view).toMatchObject({ week: WEEK, monday: '2026-05-11', leastCount: 5, published: null, history: [], names: { 'rose-black-spot': 'Rose black spot' } })
    // Eastmere's single case could be told from the total, so Holt Fen's own five are held back with it.
    expect(view.draft.problems).toMatchObject([{ problem: SPOT.problem, text: expect.stringMatching(/^We had 6 reports\. /) as string }])
    expect((await world.desk.publicNotes()).notes).toEqual([])
    const approved = await world.desk.approveNote({ week: WEEK, note: view.draft }, sedge)
    expect(approved.published).toMatchObject({ title: 'What we are seeing, 11\u2009–\u200917 May 2026', invented: true, problems: [{ name: 'Rose black spot', total: 6, places: [] }] })
    expect((await world.desk.publicNotes()).notes).toEqual([approved.published])
  })

  it('shows what the specialist wrote, with the counts of that moment and none that is small', async () => {
    await reported({ 'holt-fen': 9, 'larkmoor': 7, 'eastmere': 1, 'gone-district': 6 })
    await reported({ eastmere: 4 }, 'rose-powdery-mildew')
    const note = { lead: 'Look at your roses.', problems: [{ problem: SPOT.problem, text: 'Pick off spotted leaves.' }, { problem: 'rose-powdery-mildew', text: 'Still rare.' }] }
    const { published } = await world.desk.approveNote({ week: WEEK, note }, sedge)
    expect(published?.problems).toEqual([
      {
        problem: SPOT.problem, name: 'Rose black spot', text: 'Pick off spotted leaves.', total: 23,
        places: [{ district: 'holt-fen', name: 'Holt Fen', count: 9 }, { district: 'larkmoor', name: 'Larkmoor', count: 7 }],
      },
      { problem: 'rose-powdery-mildew', name: expect.stringContaining('mildew') as string, text: 'Still rare.', total: null, places: [] },
    ])
    await reported({ 'upper-carse': 8 })
    expect((await world.desk.publicNotes()).notes[0]?.problems[0]?.total).toBe(23)
  })

  it('takes the region’s own smallest count', async () => {
    await reported({ 'holt-fen': 9, 'larkmoor': 9 })
    world.guide = { ...world.guide, region: { ...world.guide.region, leastPublicCount: 10 } }
    const { draft, leastCount } = await world.desk.showNote()
    expect(leastCount).toBe(10)
    const { published } = await world.desk.approveNote({ week: WEEK, note: draft }, sedge)
    expect(published?.problems).toMatchObject([{ total: 18, places: [] }])
  })

  it('is taken back at once, and approved anew keeps the day it first came out', async () => {
    const note = { lead: 'A quiet week.', problems: [] }
    await world.desk.approveNote({ week: WEEK, note }, sedge)
    const first = world.now.toISOString()
    world.now = new Date('2026-05-14T13:00:00.000Z')
    const rush = await world.member('rush', 'specialist')
    expect(await world.desk.takeBackNote({ week: WEEK }, rush)).toMatchObject({ published: null })
    await world.desk.takeBackNote({ week: WEEK }, rush)
    expect((await world.desk.publicNotes()).notes).toEqual([])
    world.now = new Date('2026-05-14T14:00:00.000Z')
    const { published, history } = await world.desk.approveNote({ week: WEEK, note: { ...note, lead: 'A calm week.' } }, sedge)
    expect(published).toMatchObject({ lead: 'A calm week.', invented: false, published: first, updated: '2026-05-14T14:00:00.000Z' })
    expect(history).toEqual([
      { what: 'approved', by: 'sedge', at: '2026-05-14T14:00:00.000Z' }, { what: 'taken back', by: 'rush', at: '2026-05-14T13:00:00.000Z' },
      { what: 'approved', by: 'sedge', at: first },
    ])
  })

  it('is refused for a week to come and for a problem that the guide has not, and taking back none is nothing', async () => {
    const note = { lead: 'A quiet week.', problems: [] }
    await expect(world.desk.approveNote({ week: '2026-W21', note }, sedge)).rejects.toMatchObject({ code: 'DAY_TO_COME' })
    await expect(world.desk.approveNote({ week: WEEK, note: { ...note, problems: [{ problem: 'no-such', text: 'Here.' }] } }, sedge)).rejects.toMatchObject({ code: 'UNKNOWN_PROBLEM' })
    expect(await world.desk.takeBackNote({ week: WEEK }, sedge)).toMatchObject({ published: null, history: [] })
  })

  it('is read by everyone newest week first', async () => {
    for (const week of ['2026-W19', '2026-W20', '2026-W18']) await world.desk.approveNote({ week, note: { lead: week, problems: [] } }, sedge)
    await world.desk.takeBackNote({ week: '2026-W19' }, sedge)
    expect(await world.desk.publicNotes()).toMatchObject({ helpline: 'Larkmoor Plant Helpline', demonstration: true, notes: [{ week: '2026-W20' }, { week: '2026-W18' }] })
  })
})
