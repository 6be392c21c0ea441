import { describe, expect, it } from 'vitest'
import type { CaseView } from '../../shared/index.js'
import { lastAnswerOf } from '../../src/web/sheet/last-answer.js'

/** A case of which only the lines matter here: 'check=answer', one that was heard in the words with a '*' behind. */
function sheet(...lines: string[]): CaseView {
  return {
    lines: lines.map(line => {
      const [id = '', said = ''] = line.split('=')
      return { check: { id, ask: '', how: '', why: '', effort: 'glance', answers: [] }, answer: said.replace('*', ''), from: said.endsWith('*') ? 'said' : 'asked', onPath: true }
    }),
  } as unknown as CaseView
}

describe('the last answer, to be undone', () => {
  it('is the new line, and then the line before it', () => {
    const first = lastAnswerOf(sheet(), sheet('part=leaves'), null)
    expect(first).toEqual({ check: 'part', answer: 'leaves', before: null })
    const second = lastAnswerOf(sheet('part=leaves'), sheet('part=leaves', 'under=fuzz'), first)
    expect(second).toEqual({ check: 'under', answer: 'fuzz', before: null })
    expect(lastAnswerOf(sheet('part=leaves', 'under=fuzz'), sheet('part=leaves'), second)).toEqual({ check: 'part', answer: 'leaves', before: null })
  })

  it('is an earlier line that was changed, with what stood there', () => {
    const changed = lastAnswerOf(sheet('part=leaves', 'under=fuzz'), sheet('part=roots', 'under=fuzz'), null)
    expect(changed).toEqual({ check: 'part', answer: 'roots', before: 'leaves' })
    // Undone, it is not offered to be undone in turn.
    expect(lastAnswerOf(sheet('part=roots', 'under=fuzz'), sheet('part=leaves', 'under=fuzz'), changed)).toEqual({ check: 'under', answer: 'fuzz', before: null })
  })

  it('is the newest asked line after a reload, and none where all was heard in the words', () => {
    expect(lastAnswerOf(null, sheet('part=leaves', 'under=fuzz', 'top=pale*'), null)).toEqual({ check: 'under', answer: 'fuzz', before: null })
    expect(lastAnswerOf(null, sheet('top=pale*'), null)).toBeNull()
  })
})
