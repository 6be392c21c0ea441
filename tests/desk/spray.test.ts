import { describe, expect, it } from 'vitest'
import { sprayInWords } from '../../src/desk/index.js'
import { sayNothing } from '../../src/match/index.js'

describe('what advice says of spraying', () => {
  it.each([
    ['none', 'No spray is needed.'], ['None.', 'No spray is needed.'],
    ['none. Never spray open blossom.', 'No spray is needed. Never spray open blossom.'],
    ['Seldom needed.', 'Seldom needed.'], ['Nonetheless, follow the label.', 'Nonetheless, follow the label.'],
    ['None is needed. Bees visit it.', 'None is needed. Bees visit it.'],
  ])('makes of "%s" the sentence "%s"', (written, shown) => {
    expect(sprayInWords(written)).toBe(shown)
  })
})

describe('words quoted back to the asker', () => {
  it.each(['is', 'the', 'Is it', 'a', "don't"])('leave out "%s", which says nothing alone', words => {
    expect(sayNothing(words)).toBe(true)
  })

  it.each(['black spots', 'rose', 'not', 'under the leaf'])('keep "%s"', words => {
    expect(sayNothing(words)).toBe(false)
  })
})
