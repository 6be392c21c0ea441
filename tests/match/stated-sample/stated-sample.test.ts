import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../../src/match/index.js'
import { measureStated, shareOf } from '../../bench/stated-measure.js'
import { isHeldBack, readQuestions } from '../questions/read-questions.js'
import { wholeGuide } from '../../whole-guide.js'
import { readSample } from './read-sample.js'

const guide = await wholeGuide()
const index = buildMatchIndex(guide)
const sample = [...(await readSample('first')), ...(await readSample('second'))]
const answersOf = new Map<string, readonly string[]>(guide.checks.map((check) => [check.id, check.answers.map(({ label }) => label)]))

describe('the fully labelled questions', () => {
  it('are three hundred different questions of the held-back third', async () => {
    const texts = new Set((await readQuestions()).map(({ text }) => text))
    expect(new Set(sample.map(({ text }) => text)).size).toBe(300)
    expect(sample.filter(({ text }) => !isHeldBack(text) || !texts.has(text))).toEqual([])
  })

  it('say only answers of their checks', () => {
    const wrong = sample.flatMap(({ said }) => Object.entries(said).flatMap(([check, answers]) => answers.filter((answer) => !(answersOf.get(check) ?? []).includes(answer)).map((answer) => `${check}: ${answer}`)))
    expect(wrong).toEqual([])
  })

  it('are heard to say what they say, and nothing else', () => {
    const { precision, contradicted, recall } = measureStated(sample, (words) => matchQuestion(index, words))
    expect(precision.share).toBeGreaterThanOrEqual(0.97)
    expect(contradicted.share).toBeLessThanOrEqual(0.01)
    expect(recall.share).toBeGreaterThan(0.19)
  })
})

describe('the interval of a share', () => {
  // R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I: 81 of 263 gives 0.2553 to 0.3662, 0 of 20 gives 0 to 0.1611 (from memory).
  it.each([[81, 263, 0.2553, 0.3662], [0, 20, 0, 0.1611]])("is Wilson's: %d of %d", (count, of, from, to) => {
    expect(shareOf(count, of).from).toBeCloseTo(from, 4)
    expect(shareOf(count, of).to).toBeCloseTo(to, 4)
  })
})
