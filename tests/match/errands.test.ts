import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { ERRANDS, FRESH_ERRANDS, FRESH_LIKE_ERRANDS, LIKE_ERRANDS } from './errands.js'

const index = buildMatchIndex(await wholeGuide())
const outOfScope = (words: string): boolean => matchQuestion(index, words).outOfScope

/** Floors a little below what was measured, so that words added to the guide do not wear the hearing of errands away. */
describe('errands, small talk and other languages', () => {
  it('are nearly all told from questions for a plant helpline, on the words used for fitting and on others', () => {
    expect(ERRANDS.filter(outOfScope).length / ERRANDS.length).toBeGreaterThan(0.88)
    expect(FRESH_ERRANDS.filter(outOfScope).length / FRESH_ERRANDS.length).toBeGreaterThan(0.8)
  })

  it.each([...LIKE_ERRANDS, ...FRESH_LIKE_ERRANDS])('are not heard in a plant question: %s', (words) => {
    expect(outOfScope(words)).toBe(false)
  })

  it.each([
    'have you any ideas for keeping deer out of my rose garden', 'do you have any suggestions for badgers that dig up the grass', 'can you recommend a treatment for the white fluff on my apple',
  ])('are not heard where advice is asked in their words: %s', (words) => {
    expect(outOfScope(words)).toBe(false)
  })

  it.each(['do you have any lawn mowers', 'whats the weekend forecast', 'will it be sunny tomorrow', 'have you any ideas where i can hire a mower'])('are heard beside such words: %s', (words) => {
    expect(outOfScope(words)).toBe(true)
  })

  it.each(['our rose has yellow leaves with black spots, do you sell a spray', 'are you open, my tomatoes have black spots on the leaves', 'molehills!!!', 'dandelions in the drive', 'my spider plant has grown pods, when will it be time to pick them', 'minus two forecast tonight, when do I bring in the hibiscus', 'leaves are curling and sticky'])(
    'do not hide a plainly told complaint, nor does want of a plant: %s', (words) => {
      expect(outOfScope(words)).toBe(false)
    },
  )
})
