import { describe, expect, it } from 'vitest'
import { guideErrorAsJson, printGuideError, suggest, type GuideError, type SourceFile } from '../../src/guide/index.js'

const file: SourceFile = { path: 'trees/hosts/lettuce.yaml', text: 'host: lettuce\nstart: tpo\nnodes: {}\n' }
const place = (start: number, end: number, of: SourceFile = file) => ({ file: of, start, end })
const error = (at: GuideError['at'], nearest: readonly string[] = []): GuideError =>
  ({ severity: 'error', code: 'UNKNOWN_NODE', message: 'There is no node "tpo".', at, nearest })

describe('printing a guide error', () => {
  it('shows place, code, sentence, suggestion, the line before and the line with a caret below', () => {
    expect(printGuideError(error([place(21, 24)], ['top']))).toBe(`trees/hosts/lettuce.yaml:2:8  error UNKNOWN_NODE
  There is no node "tpo". Did you mean "top"?
  1 | host: lettuce
  2 | start: tpo
    |        ^^^`)
  })

  it('shows no line before the first', () => {
    expect(printGuideError(error([place(0, 4)]))).toBe(`trees/hosts/lettuce.yaml:1:1  error UNKNOWN_NODE
  There is no node "tpo".
  1 | host: lettuce
    | ^^^^`)
  })

  it('names the other places that belong to it', () => {
    const other: SourceFile = { path: 'trees/problems/slugs.yaml', text: 'problem: slugs\n' }
    expect(printGuideError(error([place(21, 24), place(9, 14, other), place(0, 4)])).split('\n').slice(-2))
      .toEqual(['  see also trees/problems/slugs.yaml:1:10', '  see also trees/hosts/lettuce.yaml:1:1'])
  })

  it('keeps line numbers of different width in one column', () => {
    const long: SourceFile = { path: 'a.yaml', text: `${'x: 1\n'.repeat(9)}y: 2\n` }
    expect(printGuideError(error([place(45, 46, long)])).split('\n').slice(2)).toEqual(['   9 | x: 1', '  10 | y: 2', '     | ^'])
  })

  it('stops the caret at the end of the line, also in a file with Windows line ends', () => {
    const windows: SourceFile = { path: 'a.yaml', text: 'a: [b\r\nc: d\r\n' }
    expect(printGuideError(error([place(3, 12, windows)])).split('\n').slice(2)).toEqual(['  1 | a: [b', '    |    ^^'])
  })

  it('cuts a very long line, and shows no caret beyond the cut', () => {
    const long: SourceFile = { path: 'a.yaml', text: `${'x'.repeat(500)}: tpo` }
    const printed = printGuideError(error([place(502, 505, long)]))
    expect(printed.split('\n').slice(2)).toEqual([`  1 | ${'x'.repeat(160)}`])
  })

  it('gives the same as plain values', () => {
    expect(guideErrorAsJson(error([place(21, 24), place(0, 4)], ['top']))).toEqual({
      severity: 'error', code: 'UNKNOWN_NODE', message: 'There is no node "tpo".', nearest: ['top'],
      file: 'trees/hosts/lettuce.yaml', line: 2, column: 8, alsoAt: [{ file: 'trees/hosts/lettuce.yaml', line: 1, column: 1 }],
    })
  })

  it('joins suggestions by or, and says nothing without any', () => {
    expect(suggest(['top', 'stop'])).toBe('Did you mean "top" or "stop"?')
    expect(suggest([])).toBe('')
  })
})
