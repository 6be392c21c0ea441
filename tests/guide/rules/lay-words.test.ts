import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf } from '../lettuce-world.js'

const layWords = (alike: string, plants: string): string =>
  `alike:\n${alike}other plants: [${plants}]\nthings: [stakes]\ngrounds: [lawn]\nerrands: [opening hours]\n`

describe('rule: lay words', () => {
  it('accepts words that stand once, and keeps them in the guide', () => {
    const changes = { 'lay-words.yaml': layWords('  - [bug, insect]\n  - [grub, maggot]\n', 'courgette, dahlia') }
    expect(errorsOf(changes)).toEqual([])
    expect(compileLettuce(changes).guide?.layWords).toEqual({
      alike: [['bug', 'insect'], ['grub', 'maggot']], otherPlants: ['courgette', 'dahlia'], things: ['stakes'],
      grounds: ['lawn'], errands: ['opening hours'], kinds: new Map(),
    })
  })

  it('accepts a guide without lay words', () => {
    expect(compileLettuce({}).guide?.layWords).toEqual({ alike: [], otherPlants: [], things: [], grounds: [], errands: [], kinds: new Map() })
  })

  it('keeps the kinds of words, and accepts a word that stands in two of them', () => {
    const changes = { 'lay-words.yaml': `${layWords('  - [bug, insect]\n', 'dahlia')}kinds: { insects: [bee, fly], bites: [bee] }\n` }
    expect(errorsOf(changes)).toEqual([])
    expect(compileLettuce(changes).guide?.layWords.kinds).toEqual(new Map([['insects', ['bee', 'fly']], ['bites', ['bee']]]))
  })

  it('points at a word that stands in two groups, whatever its case', () => {
    const changes = { 'lay-words.yaml': layWords('  - [bug, insect]\n  - [grub, Bug]\n', 'dahlia') }
    expect(errorsOf(changes)).toEqual([{ code: 'LAY_WORD_TWICE', at: 'trees/lay-words.yaml:3:12', nearest: [] }])
    expect(compileLettuce(changes).errors[0]?.message).toBe('The word "Bug" stands twice among the alike words. Expected it in one group, once.')
  })

  it('points at another plant that is a host after all', () => {
    const changes = { 'lay-words.yaml': layWords('  - [bug, insect]\n', 'dahlia, cos') }
    expect(errorsOf(changes)).toEqual([{ code: 'PLANT_IS_HOST', at: 'trees/lay-words.yaml:3:24', nearest: [] }])
  })

  it('refuses a group of one word', () => {
    expect(errorsOf({ 'lay-words.yaml': layWords('  - [bug]\n', 'dahlia') })).toEqual([{ code: 'SHAPE', at: 'trees/lay-words.yaml:2:5', nearest: [] }])
  })
})
