import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())
const entriesOf = (words: string) => matchQuestion(index, words).entries.map(({ host, node }) => `${host} ${node}`)

describe('the complaints heard beside an emergency', () => {
  it('are none of the danger\'s own words: what a child or a dog ate, no pest is eating', () => {
    expect(entriesOf('my dog ate the lilies')).not.toContain('lily beetle')
    expect(entriesOf('toddler ate yew berries from the hedge').filter((entry) => entry.startsWith('yew '))).toEqual([])
    expect(entriesOf('my two year old swallowed some slug pellets')).toEqual([])
  })

  it('are those that another clause or sentence tells', () => {
    expect(entriesOf('dog ate tomatoes leaves and the tomatoes have black bottoms')[0]).toBe('tomato fruit-water')
    expect(entriesOf('my lilies have red beetles and the cat has pollen on its fur').slice(0, 2)).toEqual(['lily cats', 'lily beetle'])
    expect(entriesOf('dog ate the squash leaves. they are covered in white powder')[0]).toBe('squash marks')
  })

  it('keep the ways to what did the harm', () => {
    expect(entriesOf('my dog ate the lilies')[0]).toBe('lily cats')
    expect(entriesOf('got giant hogweed sap on my arm, it is blistering')[0]).toBe('unwanted-plant giant-touched')
    expect(entriesOf('i ate a potato that was green and feel sick')[0]).toBe('potato tuber-look')
    expect(entriesOf('weedkiller drifted from next door onto me and my roses')).toContain('rose weed-killer')
  })

  it('are left as they are where the danger is the trouble itself', () => {
    expect(entriesOf('a big limb has cracked on our oak and is hanging over the drive').length).toBeGreaterThan(0)
  })

  it('are heard in full where no danger is told', () => {
    expect(entriesOf('something ate the leaves of my lilies')).toContain('lily beetle')
  })
})
