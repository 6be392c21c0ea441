import { describe, expect, it } from 'vitest'
import { URGENT_FROM, urgencyOf } from '../../src/desk/tickets/urgency.js'
import { problemNamed } from '../../src/desk/guide-names.js'
import type { ProblemId } from '../../src/guide/index.js'
import { shippedGuide } from './desk-world.js'

describe('what makes a hand-over urgent', () => {
  const likely = (problem: ProblemId | null, probability: number) => ({ problem, probability, reasons: [] })

  async function costing(cost: 'ordinary' | 'costly' | 'regulated' | 'dangerous') {
    const guide = await shippedGuide()
    const found = guide.problems.find((problem) => problem.cost === cost)
    if (found === undefined) throw new Error(`The guide has no ${cost} problem.`)
    return { guide, id: found.id, name: found.name }
  }

  it('is nothing when no card shows and the causes are everyday ones', async () => {
    const { guide, id } = await costing('costly')
    expect(urgencyOf(guide, { cards: [], differential: [likely(id, 0.9), likely(null, 0.1)] })).toBeNull()
  })

  it('names the red flag, an emergency before a caution', async () => {
    const { guide } = await costing('ordinary')
    const caution = guide.redFlags.find(({ level }) => level === 'caution')
    const emergency = guide.redFlags.find(({ level }) => level === 'emergency')
    const cards = [caution, emergency].flatMap((flag) => flag?.id ?? [])
    expect(cards).toHaveLength(2)
    expect(urgencyOf(guide, { cards, differential: [] })).toEqual({ level: 2, why: `Red flag: ${emergency?.title ?? ''}` })
    expect(urgencyOf(guide, { cards: cards.slice(0, 1), differential: [] })).toEqual({ level: 2, why: `Red flag: ${caution?.title ?? ''}` })
  })

  it('names a problem to be reported from one chance in ten on', async () => {
    const { guide, id, name } = await costing('regulated')
    expect(urgencyOf(guide, { cards: [], differential: [likely(null, 0.9), likely(id, URGENT_FROM)] }))
      .toEqual({ level: 1, why: `Could be ${name}, to be reported` })
    expect(urgencyOf(guide, { cards: [], differential: [likely(null, 0.91), likely(id, 0.0999)] })).toBeNull()
  })

  it('names a dangerous problem from one chance in ten on', async () => {
    const { guide, id, name } = await costing('dangerous')
    expect(urgencyOf(guide, { cards: [], differential: [likely(id, 0.1)] }))
      .toEqual({ level: 1, why: `Could be ${name}, where a mistake is dangerous` })
  })

  it('looks at every problem of the guide without fault', async () => {
    const guide = await shippedGuide()
    for (const { id, cost } of guide.problems) {
      const why = urgencyOf(guide, { cards: [], differential: [likely(id, 1)] })
      expect(why === null).toBe(cost === 'ordinary' || cost === 'costly')
      expect(problemNamed(guide, id)?.id).toBe(id)
    }
  })
})
