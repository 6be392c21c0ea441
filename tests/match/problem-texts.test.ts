import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Guide, WorkedCase } from '../../src/guide/index.js'
import { buildEntryPhrases } from '../../src/match/entry-phrases.js'
import { buildKindEars } from '../../src/match/kinds.js'
import { buildLetterEars, letterSigns, type LetterEars } from '../../src/match/letter-signs.js'
import { speechOf } from '../../src/match/languages/index.js'
import { buildMeanings } from '../../src/match/meanings.js'
import { buildProblemTexts, likelinessOf } from '../../src/match/problem-texts.js'
import { tokenize } from '../../src/match/tokens.js'
import { smallGuide } from './small-guide.js'

let bare: Guide
let ears: LetterEars
beforeAll(async () => {
  const guide = await smallGuide()
  // Nothing but the texts that a test writes: no names, phrases or signs of the guide, no words used alike, no sets.
  bare = {
    ...guide, casebook: [], hosts: [], layWords: { ...guide.layWords, alike: [], kinds: new Map() }, wordSets: new Map(),
    problems: guide.problems.slice(0, 2).map((problem) => ({ ...problem, name: '', agent: null, what: '', signs: [], advice: { ...problem.advice, bottomLine: '', doNow: [] } })),
  }
  const meanings = buildMeanings(bare.layWords, speechOf(bare))
  ears = buildLetterEars(bare, meanings, buildKindEars(bare.layWords, speechOf(bare)))
})

const texts = (guide: Guide): ReturnType<typeof buildProblemTexts> => buildProblemTexts(guide, ears, buildEntryPhrases(guide, ears.meanings))
const named = (first: string, second: string): Guide => ({ ...bare, problems: bare.problems.map((problem, number) => ({ ...problem, name: number === 0 ? first : second })) })
const worked = (id: string, words: string, problem: number): WorkedCase => (
  { id, words, on: '2026-06-01', district: null, host: null, findings: new Map(), ends: { kind: 'problem', problem }, alsoRight: [] })
const likely = (guide: Guide, words: string, except: string | null = null): readonly (number | undefined)[] => {
  const tokens = tokenize(words)
  const of = likelinessOf(texts(guide), letterSigns(ears, tokens, tokens), new Set(guide.problems.map(({ number }) => number)), except)
  return guide.problems.map(({ number }) => of.get(number))
}

describe('how likely the text of a problem makes a letter', () => {
  it('is the gain of its own words, mixed with all texts, on all texts alone', () => {
    // Worked by hand with 3 parts of the own text to 7 of all (Jelinek and Mercer). Texts: "grey fur" and "grey slime knob".
    // All texts: grey (1/2 + 1/3) / 2 = 5/12, fur (1/2) / 2 = 1/4, slime and knob (1/3) / 2 = 1/6.
    // Letter "grey fur", two signs: the first gains ln(1 + 3/7 × (1/2) / (5/12)) + ln(1 + 3/7 × (1/2) / (1/4)) = ln 1.5143 + ln 1.8571 = 0.4149 + 0.6190,
    // over √2: 0.7311. The second gains ln(1 + 3/7 × (1/3) / (5/12)) = ln 1.3429 = 0.2948, over √2: 0.2085.
    const [first, second] = likely(named('grey fur', 'grey slime knob'), 'grey fur')
    expect(first).toBeCloseTo(0.7311, 3)
    expect(second).toBeCloseTo(0.2085, 3)
  })

  it('is 0 where the text has none of the words', () => {
    expect(likely(named('grey fur', 'slime'), 'knob')).toEqual([0, 0])
  })

  it('is the same in whatever order the words are said', () => {
    const word = fc.constantFrom('grey', 'fur', 'slime', 'knob', 'wilt', 'hole')
    fc.assert(fc.property(fc.uniqueArray(word, { minLength: 1 }), fc.array(word), fc.array(word), (letter, one, other) => {
      const guide = named(one.join(' '), other.join(' '))
      const back = likely(guide, [...letter].reverse().join(' '))
      for (const [number, value] of likely(guide, letter.join(' ')).entries()) expect(value).toBeCloseTo(back[number] ?? -1, 10)
    }))
  })

  it('leaves nothing behind for the next letter, and is never below 0', () => {
    const word = fc.constantFrom('grey', 'fur', 'slime', 'knob', 'wilt')
    const text = fc.array(word, { maxLength: 8 }).map((words) => words.join(' '))
    fc.assert(fc.property(text, text, text, text, (one, other, letter, another) => {
      const held = texts(named(one, other))
      const ask = (words: string): readonly [number, number][] => {
        const tokens = tokenize(words)
        return [...likelinessOf(held, letterSigns(ears, tokens, tokens), new Set([0, 1]), null)]
      }
      const before = ask(letter)
      ask(another)
      expect(ask(letter)).toEqual(before)
      expect(before.every(([, value]) => value >= 0)).toBe(true)
    }))
  })

  it('takes in the worked cases, and leaves one out as if it had never been written', () => {
    const word = fc.constantFrom('grey', 'fur', 'slime', 'knob', 'wilt')
    const text = fc.array(word, { minLength: 1, maxLength: 8 }).map((words) => words.join(' '))
    fc.assert(fc.property(text, text, text, text, (one, other, told, letter) => {
      const guide = named(one, other)
      const without = likely({ ...guide, casebook: [worked('b', other, 1)] }, letter)
      const left = likely({ ...guide, casebook: [worked('a', told, 0), worked('b', other, 1)] }, letter, 'a')
      for (const [number, value] of without.entries()) expect(left[number]).toBeCloseTo(value ?? -1, 10)
    }))
    const [before = 1, after = 0] = [likely(named('grey', 'slime'), 'furry knob')[0], likely({ ...named('grey', 'slime'), casebook: [worked('a', 'furry knob', 0)] }, 'furry knob')[0]]
    expect(after).toBeGreaterThan(before)
  })

  it('is asked only of the problems that are wanted', () => {
    const tokens = tokenize('grey fur')
    expect([...likelinessOf(texts(named('grey', 'fur')), letterSigns(ears, tokens, tokens), new Set([1]), null).keys()]).toEqual([1])
  })
})
