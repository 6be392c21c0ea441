import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CaseView } from '../../shared/index.js'
import { answerAll, openWorld, shippedGuide, type World } from './desk-world.js'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const { casebook, hosts, problems, checks } = await shippedGuide()
/** The first worked case of each plant that ends in a problem. */
const walks = hosts.flatMap(({ number }) => (
  casebook.find((one) => one.host === number && one.ends.kind === 'problem') ?? []))

describe.skipIf(walks.length === 0)('desk: worked cases of the guide, from the words to the end', () => {
  it.each(walks.map((one) => [one.id, one] as const))('%s comes to its true end or is offered to a specialist', async (_id, one) => {
    world.now = new Date(`${one.on}T09:00:00Z`)
    const host = hosts[one.host ?? -1]
    const opened = await world.desk.openCase({ words: one.words, district: one.district }, null)
    let view = opened.step.kind === 'red-flag' ? await world.desk.carryOn(opened.link, { revision: 0 }, null) : opened
    const entry = view.place.entries.find((offer) => offer.host === host?.id)
    view = await world.desk.settlePlace(
      view.link, { revision: view.revision, host: host?.id ?? '', node: entry?.node ?? null }, null)
    const answers = new Map([...one.findings].map(([check, answer]) => [checks[check]?.id ?? '', answer]))
    view = await answerAll(world.desk, view, answers)

    expect(CaseView.parse(view)).toEqual(view)
    const right = [one.ends, ...one.alsoRight.map((problem) => ({ kind: 'problem' as const, problem }))]
      .flatMap((end) => (end.kind === 'problem' ? problems[end.problem]?.id ?? [] : []))
    if (view.step.kind === 'conclude') {
      expect(right).toContain(view.step.card.problem)
      expect(view.step.card.bottomLine).not.toBe('')
      expect(view.step.why.problem).toBe(view.step.card.problem)
      expect(view.step.others.map(({ problem }) => problem)).not.toContain(view.step.card.problem)
    } else {
      expect(view.step).toMatchObject({ kind: 'hand-over', because: expect.stringMatching(/\S/) })
    }
  })
})
