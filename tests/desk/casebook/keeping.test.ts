import { mkdtemp, cp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { SettleReview } from '../../../shared/index.js'
import { replayCase, type Member } from '../../../src/desk/index.js'
import { loadGuide } from '../../../src/guide/index.js'
import { buildMatchIndex } from '../../../src/match/index.js'
import { BERRY_WORDS, NOON, openWorld, TELLING_WORDS, type World } from '../desk-world.js'

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

const MILDEW = { kind: 'problem', problem: 'lettuce-downy-mildew' } as const
/** The words of a lettuce that say nothing which an entry of the tree waits for. */
const ODD_WORDS = 'Help, my name is Rosalind Ashdown, 555-0190. The lettuce looks like an old map.'

async function handedOver(words: string, answers: readonly (readonly [check: string, answer: string])[] = []) {
  const { link } = await world.desk.openCase({ words, district: 'holt-fen' }, null)
  let view = await world.desk.settlePlace(link, { revision: 0, host: 'lettuce', node: null }, null)
  for (const [check, answer] of answers) view = await world.desk.answerCheck(link, { revision: view.revision, check, answer }, null)
  await world.desk.handOver(link, { revision: view.revision, contact: { name: 'Rosalind Ashdown' } }, null)
  const { tickets } = await world.desk.listTickets({ state: 'any' })
  return String(Math.max(...tickets.map((row) => Number(row.ticket))))
}

describe('desk: the review before settling', () => {
  it('shows the casebook case without what tells who asked, and keeps nothing', async () => {
    const ticket = await handedOver(ODD_WORDS, [['leaf-underside', 'white or grey fuzz'], ['recent-weather', 'not sure']])
    const review = await world.desk.reviewTicket(ticket, { outcome: MILDEW })
    expect(SettleReview.parse(review)).toEqual(review)
    expect(review.casebook?.words).toBe('Help, my name is (name), (telephone number). The lettuce looks like an old map.')
    expect(review.casebook?.removed).toEqual([{ kind: 'telephone number', count: 1 }, { kind: 'name', count: 1 }])
    expect(parse(review.casebook?.yaml ?? '')).toEqual({ casebook: 'from-tickets', cases: [{
      case: `lettuce-ticket-${ticket}`, words: review.casebook?.words, on: '2026-05-14', district: 'holt-fen', host: 'lettuce',
      findings: { 'leaf-underside': 'white or grey fuzz' }, ends: { problem: 'lettuce-downy-mildew' },
    }] })
    expect(await world.desk.keptCases()).toEqual({ cases: [], yaml: '' })
  })

  it('says which entry phrase is missing and which check would have decided it', async () => {
    const ticket = await handedOver(ODD_WORDS)
    const { suggestions } = await world.desk.reviewTicket(ticket, { outcome: MILDEW })
    expect(suggestions.map(({ kind }) => kind)).toEqual(['entry phrase', 'deciding check'])
    const [entry, deciding] = suggestions
    expect(entry).toMatchObject({ host: 'lettuce', problem: MILDEW.problem, phrase: expect.stringContaining('Help, my name is (name)') })
    expect(deciding?.check).toMatchObject({ id: expect.any(String), ask: expect.any(String) })
    expect(deciding?.gainBits).toBeGreaterThanOrEqual(1)
    expect(deciding?.text).toContain(`“${deciding?.check?.ask ?? ''}” was not answered`)
  })

  it('names the check whose answers differ most between the truth and what led, reckoned by hand', async () => {
    const ticket = await handedOver(ODD_WORDS)
    const view = await world.desk.showTicket(ticket, sedge)
    const truth = view.differential.filter(({ problem }) => problem !== null).at(-1)?.problem ?? ''
    const leader = view.differential.find(({ problem }) => problem !== null)?.problem ?? ''
    const { suggestions } = await world.desk.reviewTicket(ticket, { outcome: { kind: 'problem', problem: truth } })
    const { guide } = world
    const host = guide.hosts.find(({ id }) => id === 'lettuce')
    const row = (id: string) => host?.problems.indexOf(guide.problemNumbers.get(id) ?? -1) ?? -1
    const bits = (place: number): number => {
      const log = host?.logLikelihood[place] ?? new Float64Array()
      const answers = guide.checks[host?.checks[place] ?? -1]?.answers.length ?? 0
      return Array.from({ length: answers }, (_, a) => a).reduce((sum, a) => {
        const p = Math.exp(log[row(truth) * answers + a] ?? 0)
        const q = Math.exp(log[row(leader) * answers + a] ?? 0)
        return sum + p * Math.log2(p / q)
      }, 0)
    }
    const places = [...host?.checks ?? []].map((number, place) => ({ check: guide.checks[number], bits: bits(place) }))
      .filter(({ check }) => check?.effort !== 'send a sample' && check?.effort !== 'wait a day')
      .sort((a, b) => b.bits - a.bits)
    const deciding = suggestions.find(({ kind }) => kind === 'deciding check')
    expect(deciding?.check?.id).toBe(places[0]?.check?.id)
    expect(deciding?.gainBits).toBeCloseTo(places[0]?.bits ?? 0, 9)
  })

  it('has nothing against the tree where the guide was right by itself', async () => {
    const ticket = await handedOver(TELLING_WORDS, [['leaf-underside', 'white or grey fuzz'], ['recent-weather', 'cool and wet'], ['leaf-holes', 'no holes']])
    const { case: file } = await world.desk.showTicket(ticket, sedge)
    expect(file.step).toMatchObject({ kind: 'conclude', card: { problem: MILDEW.problem } })
    expect((await world.desk.reviewTicket(ticket, { outcome: MILDEW })).suggestions).toEqual([])
  })

  it('makes no casebook case of what is no plant problem', async () => {
    const ticket = await handedOver(ODD_WORDS)
    expect(await world.desk.reviewTicket(ticket, { outcome: { kind: 'not a plant problem' } })).toMatchObject({
      casebook: null, whyNoCasebook: expect.stringContaining('not about a plant'), suggestions: [],
    })
  })

  it('ends a case that raised an emergency with its card, whatever the plant had', async () => {
    const ticket = await handedOver(BERRY_WORDS)
    const review = await world.desk.reviewTicket(ticket, { outcome: { kind: 'not known' } })
    expect(parse(review.casebook?.yaml ?? '')).toMatchObject({ cases: [{ ends: { 'red flag': expect.any(String) } }] })
  })
})

describe('desk: keeping when settling', { timeout: 90_000 }, () => {
  it('keeps the case as the specialist left it, and what they chose to suggest', async () => {
    const ticket = await handedOver(ODD_WORDS)
    const settled = await world.desk.settleTicket(ticket, {
      text: 'Mildew.', outcome: MILDEW, casebook: { words: 'The lettuce looks like an old map.' }, suggest: ['entry phrase'],
    }, sedge)
    expect(settled.casebook).toEqual({ by: 'sedge', at: world.now.toISOString() })
    expect((await world.desk.keptCases()).cases).toMatchObject([{ ticket, by: 'sedge', words: 'The lettuce looks like an old map.' }])
    expect((await world.desk.keptSuggestions()).suggestions).toMatchObject([{ kind: 'entry phrase', ticket, by: 'sedge', phrase: 'The lettuce looks like an old map' }])
    expect(settled.history.map(({ kind }) => kind)).toEqual(['opened', 'kept for the casebook', 'suggested', 'taken', 'settled'])
  })

  it('keeps nothing that was not wished for', async () => {
    const ticket = await handedOver(ODD_WORDS)
    await world.desk.settleTicket(ticket, { text: 'Mildew.', outcome: MILDEW }, sedge)
    expect(await world.desk.keptCases()).toEqual({ cases: [], yaml: '' })
    expect(await world.desk.keptSuggestions()).toEqual({ suggestions: [] })
  })

  it('counts the last of a ticket\'s cases, when an answer is amended', async () => {
    const ticket = await handedOver(ODD_WORDS)
    await world.desk.settleTicket(ticket, { text: 'Mildew.', outcome: MILDEW, casebook: { words: 'an old map' } }, sedge)
    await world.desk.amendTicket(ticket, { text: 'We do not know after all.', outcome: { kind: 'not known' }, casebook: { words: 'an old map, still' } }, sedge)
    const { cases, yaml } = await world.desk.keptCases()
    expect(cases).toHaveLength(1)
    expect(parse(yaml)).toMatchObject({ cases: [{ words: 'an old map, still', ends: { 'hand over': true } }] })
    expect(await world.store.db.selectFrom('casebook_case').select('words').execute()).toEqual([{ words: 'an old map, still' }])
  })

  it('drops what was kept from an answer that is amended or taken back, unless it is kept again', async () => {
    const kept = { text: 'Mildew.', outcome: MILDEW, casebook: { words: 'The lettuce looks like an old map.' }, suggest: ['entry phrase' as const] }
    const unsure = { text: 'We do not know after all.', outcome: { kind: 'not known' as const } }
    const nothing = async () => expect([await world.desk.keptCases(), await world.desk.keptSuggestions()]).toEqual([{ cases: [], yaml: '' }, { suggestions: [] }])
    const ticket = await handedOver(ODD_WORDS)
    await world.desk.settleTicket(ticket, kept, sedge)
    const amended = await world.desk.amendTicket(ticket, unsure, sedge)
    expect(amended.casebook).toBeNull()
    expect(amended.history.map(({ kind }) => kind)).toContain('dropped what was kept')
    await nothing()

    await world.desk.amendTicket(ticket, kept, sedge)
    expect((await world.desk.keptCases()).cases).toHaveLength(1)
    expect((await world.desk.keptSuggestions()).suggestions).toHaveLength(1)
    await world.desk.reopenTicket(ticket, sedge)
    await nothing()

    await world.desk.settleTicket(ticket, kept, sedge)
    expect((await world.desk.keptSuggestions()).suggestions).toHaveLength(1)
    const { case: { link, revision } } = await world.desk.showTicket(ticket, sedge)
    await world.desk.addWords(link, { revision, words: BERRY_WORDS }, null)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'waiting', casebook: null })
    await nothing()
  })

  it('leaves what was kept where it is when a ticket cannot be opened again', async () => {
    const ticket = await handedOver(ODD_WORDS)
    await expect(world.desk.reopenTicket(ticket, sedge)).rejects.toMatchObject({ code: 'TICKET_ELSEWHERE' })
    await world.desk.settleTicket(ticket, { text: 'Mildew.', outcome: MILDEW, casebook: { words: 'an old map' } }, sedge)
    await world.desk.amendTicket(ticket, { text: 'Mildew.', outcome: MILDEW }, sedge)
    expect((await world.desk.keptCases()).cases).toHaveLength(1)
  })

  it('gives a file that the guide takes as it is, and that replays', async () => {
    const plain = await handedOver(TELLING_WORDS, [['leaf-underside', 'white or grey fuzz'], ['recent-weather', 'cool and wet']])
    const danger = await handedOver(BERRY_WORDS)
    await world.desk.settleTicket(plain, { text: 'Mildew: pick the leaves.', outcome: MILDEW, casebook: { words: TELLING_WORDS } }, sedge)
    await world.desk.settleTicket(danger, { text: '…', outcome: { kind: 'not known' }, casebook: { words: `# "${BERRY_WORDS}": 'yes'\n- and: [more` } }, sedge)
    const folder = await mkdtemp(join(tmpdir(), 'frondline-trees-'))
    try {
      await cp('trees', folder, { recursive: true })
      await writeFile(join(folder, 'casebook', 'from-tickets.yaml'), (await world.desk.keptCases()).yaml)
      const { guide, errors } = await loadGuide(folder, NOON.slice(0, 10))
      expect(errors).toEqual([])
      if (guide === null) throw new Error('no guide')
      const index = buildMatchIndex(guide)
      const kept = guide.casebook.filter(({ id }) => /-ticket-\d+$/.test(id))
      expect(kept.map((worked) => replayCase(guide, index, worked).ok)).toEqual([true, true])
    } finally {
      await rm(folder, { recursive: true, force: true })
    }
  })
})
