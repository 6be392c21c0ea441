import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { readTerms } from '../../src/match/meanings.js'
import { tokenize } from '../../src/match/tokens.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())
const isFlowerDenied = (words: string): boolean | undefined => readTerms(index.entries.meanings, tokenize(words)).find(({ exact }) => exact === 'flower')?.negated
const firstOf = (words: string): string => {
  const [first] = matchQuestion(index, words).entries
  return first === undefined ? 'nothing' : `${first.host}/${first.node}`
}

// All sentences are invented.
describe('a flower or fruit that does not come', () => {
  it.each([
    ['my clematis refuses to flower', 'clematis/flowers'],
    ['the clematis has yet to give one single flower', 'clematis/flowers'],
    ["grandma's roses fail to bloom", 'rose/few-flowers'],
    ["hasn't produced a single pod yet, the runner beans", 'bean/pods'],
  ])('is heard however it is denied: %s', (words, entry) => {
    expect(firstOf(words)).toBe(entry)
  })

  it('is denied by "yet" and "fails" only where "to" follows', () => {
    expect(isFlowerDenied('it has yet to flower')).toBe(true)
    expect(isFlowerDenied('it fails to flower')).toBe(true)
    expect(isFlowerDenied('I am glad, yet it flowers')).toBe(false)
    expect(isFlowerDenied('where all else fails it flowers')).toBe(false)
  })
})

describe('the name of a plant', () => {
  it('is no complaint, though one of its troubles is called after it', () => {
    expect(firstOf('clematis wilt')).toBe('clematis/wilt')
    expect(firstOf('no flowers on my clematis')).toBe('clematis/flowers')
  })

  it('says what is asked where a tree is for many plants', () => {
    expect(firstOf('bindweed everywhere')).toMatch(/^unwanted-plant\//u)
  })
})
