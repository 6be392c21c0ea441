import { describe, expect, it } from 'vitest'
import { append, compileLettuce, warningsOf } from '../lettuce-world.js'

/** Puts a chain of nodes before the node top, from which the longest path asks two checks more. */
const chain = (length: number, entry = '') => Array.from({ length }, (_, place) => `  link-${place + 1}:
${place === 0 ? entry : ''}    check: slime
    answers: { yes: { hand over: "Slime." }, no: ${place + 1 === length ? 'top' : `link-${place + 2}`} }\n`).join('')

const after = (length: number) => (text: string) => text.replace('start: top', 'start: link-1').replace('nodes:\n', `nodes:\n${chain(length)}`)

describe('rule: no path is longer than 8 checks', () => {
  it('accepts a path of 8 checks', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': after(6) })).toEqual([])
  })

  it('points at the start of a tree with a path of 9 checks', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': after(7) })).toEqual([{ code: 'PATH_LENGTH', at: 'trees/hosts/lettuce.yaml:4:8', nearest: [] }])
    expect(compileLettuce({ 'hosts/lettuce.yaml': after(7) }).warnings[0]?.message)
      .toBe('The longest path of "lettuce" asks 9 checks. Expected at most 8.')
  })

  it('points at an entry from which a path of 9 checks goes', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': (text) => text.replace('nodes:\n', `nodes:\n${chain(7, '    entry: ["all of it at once"]\n')}`) }))
      .toEqual([{ code: 'PATH_LENGTH', at: 'trees/hosts/lettuce.yaml:6:3', nearest: [] }])
  })

  it('is silent where the host accepts it with a reason', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': (text) => append('accepts: [{ warning: PATH_LENGTH, because: the last checks are glances }]\n')(after(7)(text)) })).toEqual([])
  })
})
