import { describe, expect, it } from 'vitest'
import { plantNames, spreadWordSets } from '../../src/guide/word-sets.js'

describe('the set of plant names', () => {
  it('holds names of one word and their plurals, and none of several words', () => {
    expect(plantNames(['Rose', 'sweet corn', 'hostas'])).toEqual(['hostas', 'rose', 'roses'])
  })

  it('leaves no pattern where it has no names: a choice of nothing is never heard', () => {
    expect(spreadWordSets(['blisters on my (plant names)', 'rash'], new Map([['plant names', []]]))).toEqual(['rash'])
  })

  it('stands for a choice within a pattern, as any other set does', () => {
    expect(spreadWordSets(['blisters on my (plant names)'], new Map([['plant names', plantNames(['peach', 'plum'])]]))).toEqual(['blisters on my peach/peachs/plum/plums'])
  })
})
