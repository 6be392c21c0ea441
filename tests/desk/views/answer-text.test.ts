import { beforeAll, describe, expect, it } from 'vitest'
import { answerText } from '../../../src/desk/views/answer-text.js'
import type { Guide, Problem } from '../../../src/guide/index.js'
import { wholeGuide } from '../../whole-guide.js'

let guide: Guide
beforeAll(async () => { guide = await wholeGuide() })

function problem(name: string): Problem {
  const found = guide.problems.find(({ id }) => id === name)
  if (found === undefined) throw new Error(`No problem "${name}".`)
  return found
}

describe('the text an answer starts from', () => {
  it('never sends the asker to a specialist, whatever the problem', () => {
    for (const each of guide.problems) expect(answerText(guide, each).text, each.id).not.toMatch(/specialist|\breport it\b/i)
  })

  it('says which sentences of the late blight advice it left out', () => {
    const { text, leftOut } = answerText(guide, problem('tomato-late-blight'))
    expect(leftOut).toContain('Report it.')
    expect(leftOut).toContain('A specialist will look and say what to do next.')
    expect(text).toMatch(/^Leave the plant where it is\. If it is late blight/)
    expect(text).toContain('Do not carry any part of the plant to other gardens, shops or shows.')
  })

  it('keeps a warning that may still come true, and lets it say us', () => {
    expect(answerText(guide, problem('tomato-wilt-disease')).text).toContain('slime oozes from the cut stem, leave it in place and tell us. A rare wilt')
  })

  it('keeps every sentence of advice that sends nobody on', () => {
    const { text, leftOut } = answerText(guide, problem('rose-black-spot'))
    const { advice, cautions } = problem('rose-black-spot')
    expect(leftOut).toEqual([])
    for (const line of [advice.bottomLine, ...advice.doNow, ...advice.nextYear, ...cautions]) expect(text).toContain(line)
  })

  it('keeps the cautions of every problem', () => {
    for (const each of guide.problems) for (const caution of each.cautions) expect(answerText(guide, each).text, each.id).toContain(caution)
  })
})
