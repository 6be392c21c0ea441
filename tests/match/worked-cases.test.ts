import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Guide, WorkedCase } from '../../src/guide/index.js'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { speechOf } from '../../src/match/languages/index.js'
import { buildMeanings, type Meanings, readTerms } from '../../src/match/meanings.js'
import { tokenize } from '../../src/match/tokens.js'
import { buildCaseEars, likenessToCases } from '../../src/match/worked-cases.js'
import { smallGuide } from './small-guide.js'

let bare: Guide
let meanings: Meanings
beforeAll(async () => {
  bare = await smallGuide()
  meanings = buildMeanings({ ...bare.layWords, alike: [] }, speechOf(bare))
})

const worked = (id: string, words: string, problem: number): WorkedCase => (
  { id, words, on: '2026-06-01', district: null, host: null, findings: new Map(), ends: { kind: 'problem', problem }, alsoRight: [] })

const likeness = (cases: readonly WorkedCase[], words: string, except: string | null = null): number[] => {
  const ears = buildCaseEars({ ...bare, casebook: cases }, meanings)
  return [...likenessToCases(ears, readTerms(meanings, tokenize(words)), except)]
}

describe('likeness to worked cases', () => {
  it('is the cosine of the tf-idf vectors', () => {
    // Worked by hand with N = 3 cases and rarity(t) = ln((1 + N) / (1 + n_t)) + 1, as in "smooth idf".
    // wilt stands in two cases: r = ln(4/3) + 1 = 1.2877; slime and fur in one: r = ln(4/2) + 1 = 1.6931.
    // "slime wilt" against the case "slime wilt wilt": tf of wilt there is 1 + ln 2 = 1.6931, so its part is 1.6931 × 1.2877 = 2.1802.
    // dot = 1.6931² + 1.2877 × 2.1802 = 2.8666 + 2.8074 = 5.6740; lengths: √(1.6931² + 1.2877²) = 2.1271, √(1.6931² + 2.1802²) = 2.7604.
    // cosine = 5.6740 / (2.1271 × 2.7604) = 0.9663. Against "wilt fur": 1.2877² / (2.1271 × √(1.2877² + 1.6931²)) = 1.6581 / 4.5246 = 0.3665.
    const [first = 0, second = 0, third = 0] = likeness([worked('a', 'slime wilt wilt', 0), worked('b', 'wilt fur', 1), worked('c', 'knob', 2)], 'slime wilt')
    expect(first).toBeCloseTo(0.9663, 3)
    expect(second).toBeCloseTo(0.3665, 3)
    expect(third).toBe(0)
  })

  it('is 1 for a case in the very same words, in any order', () => {
    expect(likeness([worked('a', 'yellow spots under the leaves', 3)], 'leaves: spots, yellow, under')[3]).toBeCloseTo(1, 10)
  })

  it('takes the most alike of the cases that ended in one problem', () => {
    const both = likeness([worked('a', 'grey fur', 1), worked('b', 'grey slime', 1)], 'grey slime')
    expect(both[1]).toBeCloseTo(1, 10)
  })

  it('leaves out the case that is played again', () => {
    expect(likeness([worked('a', 'grey fur', 1)], 'grey fur', 'a')[1]).toBe(0)
  })

  it('does not take what is denied for what is said', () => {
    const cases = [worked('a', 'no flowers', 1), worked('b', 'flowers everywhere', 2)]
    const [, denied = 0, said = 0] = likeness(cases, 'no flowers')
    expect(denied).toBeGreaterThan(said)
  })

  it('knows only cases that ended in a problem', () => {
    expect(Math.max(...likeness([{ ...worked('a', 'grey fur', 1), ends: { kind: 'hand over' } }], 'grey fur'))).toBe(0)
  })

  it('stays between 0 and 1 and leaves nothing behind for the next question', () => {
    const word = fc.constantFrom('grey', 'fur', 'wilt', 'leaf', 'no', 'slime', 'hole', 'never', 'yellow')
    const text = fc.array(word, { maxLength: 12 }).map((words) => words.join(' '))
    fc.assert(fc.property(fc.array(text, { maxLength: 6 }), text, text, (told, one, other) => {
      const ears = buildCaseEars({ ...bare, casebook: told.map((words, number) => worked(`case-${number}`, words, number % bare.problems.length)) }, meanings)
      const ask = (words: string): number[] => [...likenessToCases(ears, readTerms(meanings, tokenize(words)), null)]
      const before = ask(one)
      ask(other)
      expect(ask(one)).toEqual(before)
      expect(before.every((value) => value >= 0 && value <= 1 + 1e-9)).toBe(true)
    }))
  })
})

describe('a question in the words of a worked case', () => {
  const WORDS = 'spots on the leaves'

  it('is led first to what that case ended in, and its best score stays what the words alone give', () => {
    const plain = matchQuestion(buildMatchIndex(bare), WORDS)
    const [first, second] = plain.entries
    if (first === undefined || second === undefined) throw new Error('The question must be heard at two entries.')
    const wanted = plain.entries.slice(1).find(({ problems }) => problems.some((problem) => !first.problems.includes(problem)))
    const problem = wanted?.problems.find((one) => !first.problems.includes(one))
    if (wanted === undefined || problem === undefined) throw new Error('Another entry must lead to a problem of its own.')
    const taught = { ...bare, casebook: [worked('a', WORDS, bare.problemNumbers.get(problem) ?? -1)] }
    const heard = matchQuestion(buildMatchIndex(taught), WORDS)
    const share = (entries: typeof heard.entries): number => (entries.find(({ node, host }) => node === wanted.node && host === wanted.host)?.score ?? 0) / (entries.find(({ node, host }) => node === first.node && host === first.host)?.score ?? 1)
    expect(share(heard.entries)).toBeGreaterThan(share(plain.entries))
    expect(heard.entries[0]?.score).toBe(first.score)
    expect(matchQuestion(buildMatchIndex(taught), WORDS, 'a').entries).toEqual(plain.entries)
  })
})
