import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())
const threeOf = (words: string): readonly string[] => matchQuestion(index, words).entries.slice(0, 3).flatMap(({ problems }) => problems)

// Five sentences invented for this test after the weights were fitted, none with the words of an entry phrase of its job.
describe('a letter that asks for a garden job in its own words', () => {
  it.each([
    ['We have a damp corner by the shed that never sees the sun. What would be happy in there and not want much fussing over?', 'job-choose-plant'],
    ['The astrantia has doubled in size and is dying out in the middle. Could I make several of it, and is now alright?', 'job-divide-perennial'],
    ['would my salvias root if I just stick bits of them in a glass', 'job-cuttings'],
    ['Our neighbour’s sycamore is enormous and every year it takes more of our light. Who has the say over it and who pays?', 'job-cut-large-tree'],
    ['do my pelargoniums have to come indoors for the cold months or will the porch do', 'job-bring-in'],
  ])('is offered that job among three: %s', (words, job) => {
    expect(threeOf(words)).toContain(job)
  })

  it('is offered it by the job’s own name, whatever phrases lead to it', () => {
    const { entries } = matchQuestion(index, 'We have a damp corner by the shed that never sees the sun. What would be happy in there and not want much fussing over?')
    expect(entries.find(({ problems }) => problems.includes('job-choose-plant' as never))?.phrase).toBe('Choosing a plant for a place')
  })

  it('still comes to the complaint where a trouble is what it is about', () => {
    const [first] = matchQuestion(index, 'I pruned my roses in March and fed them, and now the leaves have black spots and drop').entries
    expect([first?.host, first?.problems.includes('rose-black-spot' as never)]).toEqual(['rose', true])
  })

  it('is heard in no word that no letter ever had', () => {
    expect(matchQuestion(index, 'asdfghjkl').entries).toEqual([])
  })
})
