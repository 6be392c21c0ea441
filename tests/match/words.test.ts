import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { slipsBetween } from '../../src/match/edit-distance.js'
import { buildSpeller } from '../../src/match/spelling.js'
import { stem } from '../../src/match/stems.js'
import { fold, tokenize } from '../../src/match/tokens.js'
import { buildPatternIndex, findGroups } from '../../src/match/word-pattern.js'

describe('words of a text', () => {
  it('folds case, accents, ligatures and apostrophes', () => {
    expect(['Didn’t', "didn't", 'CAFÉ', 'ﬁre', 'Straße', 'STRASSE'].map(fold)).toEqual(['didnt', 'didnt', 'cafe', 'fire', 'strasse', 'strasse'])
  })

  it('parts words at hyphens and slashes, and keeps where each stands', () => {
    expect(tokenize('weed-killer/Käfer!')).toEqual([
      { text: 'weed', at: 0, end: 4 }, { text: 'killer', at: 5, end: 11 }, { text: 'kafer', at: 12, end: 17 },
    ])
  })

  it('passes over soft hyphens and joiners inside a word', () => {
    expect(tokenize('straw\u00ADberry let\u200Btuce').map(({ text }) => text)).toEqual(['strawberry', 'lettuce'])
  })

  it('is the same word in capitals, whatever the letters', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(tokenize(text.toUpperCase()).map((token) => token.text)).toEqual(tokenize(text).map((token) => token.text))
    }))
  })
})

describe('stems', () => {
  it.each([
    ['leaf', 'leaves', 'leafs'],
    ['spot', 'spots', 'spotted', 'spotty'],
    ['curl', 'curls', 'curling', 'curled', 'curly'],
    ['yellow', 'yellowing', 'yellowed', 'yellowish'],
    ['hole', 'holes', 'holey'],
    ['wilt', 'wilts', 'wilting', 'wilted'],
    ['drop', 'drops', 'dropping', 'dropped'],
    ['berry', 'berries'],
    ['mush', 'mushy'],
    ['rot', 'rots', 'rotting', 'rotten'],
  ])('brings together %s and its forms', (word, ...forms) => {
    for (const form of forms) expect(stem(form)).toBe(stem(word))
  })

  it('keeps apart words that only look like forms of one', () => {
    for (const [one, other] of [['striped', 'stripped'], ['stripes', 'strips'], ['budge', 'budgie']] as const) expect(stem(one)).not.toBe(stem(other))
    for (const form of ['stripes', 'striped', 'stripy', 'stripey']) expect(stem(form)).toBe(stem('stripe'))
  })

  it('keeps different complaints apart', () => {
    const words = ['leaf', 'spot', 'curl', 'yellow', 'hole', 'wilt', 'drop', 'rot', 'root', 'bud', 'bug', 'stem', 'scab', 'rust', 'brown']
    expect(new Set(words.map(stem)).size).toBe(words.length)
  })
})

describe('slips between words', () => {
  it.each([
    ['tomato', 'tomato', 0], ['tomaot', 'tomato', 1], ['tomatoe', 'tomato', 1], ['letuce', 'lettuce', 1], ['kitten', 'sitting', 3],
  ])('%s and %s are %i apart', (a, b, slips) => {
    expect(slipsBetween(a, b, 5)).toBe(slips)
  })

  it('agrees with the slow obvious way, cut off at the limit', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 })
    fc.assert(fc.property(word, word, fc.integer({ min: 0, max: 4 }), (a, b, limit) => {
      expect(slipsBetween(a, b, limit)).toBe(Math.min(slowSlips(a, b), limit + 1))
    }))
  })
})

describe('spelling', () => {
  const spell = buildSpeller(['tomato', 'lettuce', 'pear', 'pea', 'spots', 'mildew', 'strawberry'])

  it('finds the known word behind a slip', () => {
    expect(spell('tomaot')).toEqual([{ word: 'tomato', slips: 1 }])
    expect(spell('strawbery')).toEqual([{ word: 'strawberry', slips: 1 }])
    expect(spell('womato')).toEqual([{ word: 'tomato', slips: 1 }])
  })

  it('wants short words exact, and does not take a word for one that merely holds it', () => {
    expect(spell('peer')).toEqual([])
    expect(spell('mild')).toEqual([])
    expect(spell('berry')).toEqual([])
  })
})

describe('word patterns', () => {
  const find = (patterns: readonly string[], text: string): readonly [number, number][] => {
    const tokens = tokenize(text)
    return (findGroups(tokens, buildPatternIndex([patterns])).get(0) ?? []).map(({ first, last }) => [first, last])
  }

  it('hears whole words only', () => {
    expect(find(['ate'], 'late plate ate')).toEqual([[2, 2]])
  })

  it('hears each choice of a slash and passes over small words between', () => {
    expect(find(['slugs/snails ate/chewed leaf'], 'snails chewed some of the leaf')).toEqual([[0, 5]])
    expect(find(['slugs/snails ate/chewed leaf'], 'snails saw the leaf')).toEqual([])
  })

  it('passes over no more small words than anybody says in a row', () => {
    expect(find(['ate leaf'], 'ate um like maybe some of the leaf')).toEqual([[0, 7]])
    expect(find(['ate leaf'], `ate ${'the '.repeat(20)}leaf`)).toEqual([])
  })

  it('gives the places in order, each once, where patterns of a group begin or end alike', () => {
    expect(find(['ate the leaf', 'ate leaf', 'ate', 'ate all/some leaf/leaves'], 'ate the leaf, ate all leaves')).toEqual([[0, 0], [0, 2], [3, 3], [3, 5]])
  })

  it('does not pass over a word that changes what happened', () => {
    expect(find(['child ate'], 'child never ate')).toEqual([])
  })
})

function slowSlips(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length
  const [restA, restB] = [a.slice(1), b.slice(1)]
  let least = Math.min(slowSlips(restA, b) + 1, slowSlips(a, restB) + 1, slowSlips(restA, restB) + (a[0] === b[0] ? 0 : 1))
  if (a.length > 1 && b.length > 1 && a[0] === b[1] && a[1] === b[0]) least = Math.min(least, slowSlips(a.slice(2), b.slice(2)) + 1)
  return least
}
