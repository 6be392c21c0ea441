import { describe, expect, it } from 'vitest'
import { adviceCard, flagCards } from '../../src/desk/views/cards.js'
import { shippedGuide } from './desk-world.js'

const guide = await shippedGuide()

describe('the look-alikes on an advice card', () => {
  it('grow on the plant of the case', () => {
    const slugs = guide.problems[guide.problemNumbers.get('slugs-and-snails') ?? -1]
    const [lettuce, tomato] = ['lettuce', 'tomato'].map((id) => guide.hosts[guide.hostNumbers.get(id) ?? -1])
    if (slugs === undefined || lettuce === undefined || tomato === undefined) throw new Error('The guide has no slugs on lettuce and tomato.')
    expect(adviceCard(guide, tomato, slugs, 0.9).lookAlikes.map(({ problem }) => problem)).toContain('tomato-caterpillars')
    expect(adviceCard(guide, lettuce, slugs, 0.9).lookAlikes.map(({ problem }) => problem)).not.toContain('tomato-caterpillars')
  })

  it('are never of another plant, for any problem of any plant', () => {
    for (const host of guide.hosts) {
      for (const number of host.problems) {
        const problem = guide.problems[number]
        if (problem === undefined) continue
        const shown = adviceCard(guide, host, problem, 0.9).lookAlikes.map(({ problem: id }) => guide.problemNumbers.get(id) ?? -1)
        expect(shown.filter((one) => !host.problems.includes(one)), `${problem.id} on ${host.id}`).toEqual([])
      }
    }
  })
})

describe('the cards of a case', () => {
  it('stand gravest first: what calls the emergency number soonest, then other emergencies, then cautions', () => {
    expect(flagCards(guide, ['about-to-eat', 'pet-ate-plant', 'poison-question', 'sap-on-skin', 'someone-ate-plant']).map(({ id }) => id))
      .toEqual(['someone-ate-plant', 'sap-on-skin', 'about-to-eat', 'pet-ate-plant', 'poison-question'])
  })

  it('lead on to a place that the guide has, in its words', () => {
    const [card] = flagCards(guide, ['pet-ate-plant'])
    expect(card?.afterwards).toMatchObject({ host: 'poison-plant', hostName: 'Is this plant poisonous?', node: 'form' })
    expect(flagCards(guide, ['tree-hazard'])[0]).toMatchObject({ looking: expect.stringContaining('safe place') })
  })
})
