import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openWorld, type World } from '../desk-world.js'

let world: World
beforeEach(async () => {
  world = await openWorld()
})
afterEach(() => world.close())

// Its words alone answer no check of the job's tree.
const REPOT = 'when should I repot my peace lily, it is too big for its pot'

describe('a garden job that is taken by its name', () => {
  it('answers the check where it was offered, which is not asked again', async () => {
    const opened = await world.desk.openCase({ words: REPOT }, null)
    const offer = opened.place.entries.find(({ phrase }) => phrase === 'Repotting')
    expect(offer).toMatchObject({ host: 'planting', node: 'move' })
    const settled = await world.desk.settlePlace(opened.link, { revision: 0, host: 'planting', node: 'move' }, null)
    expect(settled.lines.map(({ check, answer, from }) => [check.id, answer, from])).toContainEqual(['move-what', 'a plant that has outgrown its pot', 'said'])
    // What is still asked is another look.
    expect(settled.step).toMatchObject({ kind: 'ask', check: { id: 'roots-state' } })
  })

  it('can be changed like any line', async () => {
    const opened = await world.desk.openCase({ words: REPOT }, null)
    await world.desk.settlePlace(opened.link, { revision: 0, host: 'planting', node: 'move' }, null)
    const changed = await world.desk.answerCheck(opened.link, { revision: 1, check: 'move-what', answer: 'grass or a lawn' }, null)
    expect(changed.step).toMatchObject({ kind: 'conclude', card: { problem: 'job-sow-lawn' } })
  })

  it('says nothing where another place is taken, or the place is picked from the list', async () => {
    const opened = await world.desk.openCase({ words: 'my peace lily droops' }, null)
    const settled = await world.desk.settlePlace(opened.link, { revision: 0, host: 'planting', node: 'move' }, null)
    expect(settled.lines).toEqual([])
    expect(settled.step).toMatchObject({ kind: 'ask' })
  })
})
