import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf } from '../lettuce-world.js'

const SETS = 'people: [child, toddler, (elders)]\nelders: [gran, grandad]\n'
const flag = (word: string): string => `
red flag: ate
title: Somebody ate it
level: caution
hear: [{ all of: [[${word}], [ate]] }]
card: { do now: [Wait.], call: [] }
then: carry on
sources: common practice
reviewed: { on: 2026-05-01 }
`

describe('rule: known word sets', () => {
  it('puts the words of a set, and of the sets in it, in place of its name', () => {
    const changes = { 'word-sets.yaml': SETS, 'red-flags/ate.yaml': flag('(people), me') }
    expect(errorsOf(changes)).toEqual([])
    const { guide } = compileLettuce(changes)
    expect(guide?.redFlags.find(({ id }) => id === 'ate')?.hear[0]?.allOf).toEqual([['child', 'toddler', 'gran', 'grandad', 'me'], ['ate']])
  })

  it('puts the single words of a set as choices into a pattern', () => {
    const { guide } = compileLettuce({ 'word-sets.yaml': 'people: [child, little one, gran]\n', 'red-flags/ate.yaml': flag('(people) bit/licked') })
    expect(guide?.redFlags.find(({ id }) => id === 'ate')?.hear[0]?.allOf[0]).toEqual(['child/gran bit/licked'])
  })

  it('points at a set that is not written, with the nearest name', () => {
    const changes = { 'word-sets.yaml': SETS, 'red-flags/ate.yaml': flag('(peple)') }
    expect(errorsOf(changes)).toEqual([{ code: 'UNKNOWN_WORD_SET', at: 'trees/red-flags/ate.yaml:5:20', nearest: ['people'] }])
  })

  it('points at a set that another set names and nobody wrote', () => {
    const changes = { 'word-sets.yaml': SETS.replace('(elders)', '(eldrs)'), 'red-flags/ate.yaml': flag('(people)') }
    expect(errorsOf(changes)).toEqual([{ code: 'UNKNOWN_WORD_SET', at: 'trees/word-sets.yaml:1:26', nearest: ['elders'] }])
  })
})
