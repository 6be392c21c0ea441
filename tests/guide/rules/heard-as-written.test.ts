import { describe, expect, it } from 'vitest'
import { errorsOf } from '../lettuce-world.js'

const flag = (words: string, unless = ''): string => `
red flag: ate
title: Somebody ate it
level: caution
hear: [{ all of: [[${words}], [ate]]${unless === '' ? '' : `, unless: [[${unless}]]`} }]
card: { do now: [Wait.], call: [] }
then: carry on
sources: common practice
reviewed: { on: 2026-05-01 }
`

describe('rule: group words are heard as they are written', () => {
  it.each(['sweets', 'thought it was a sweet', 'bowl of the berries/seeds', 'in the garden', 'all of the', "baby's berries"])('is content with "%s", where small words between telling ones are passed over', (words) => {
    expect(errorsOf({ 'red-flags/ate.yaml': flag(words) })).toEqual([])
  })

  it.each(['like sweets', 'some of the berries/seeds', 'all over', 'really ill'])('points at "%s", of which one word is left', (words) => {
    expect(errorsOf({ 'red-flags/ate.yaml': flag(`child, ${words}`) })).toEqual([{ code: 'NOT_HEARD_AS_WRITTEN', at: 'trees/red-flags/ate.yaml:5:27', nearest: [] }])
  })

  it('points at a word that takes a danger back far more often than was meant', () => {
    expect(errorsOf({ 'red-flags/ate.yaml': flag('child', 'sick of') }).map(({ code }) => code)).toEqual(['NOT_HEARD_AS_WRITTEN'])
  })

  it('points at a mark inside a word, which parts it', () => {
    expect(errorsOf({ 'red-flags/ate.yaml': flag('weed-killer/spray on') }).map(({ code }) => code)).toEqual(['NOT_HEARD_AS_WRITTEN'])
  })

  it('takes "bit" for a word, and a set of words for one that tells', () => {
    expect(errorsOf({ 'word-sets.yaml': 'people: [child, gran]\n', 'red-flags/ate.yaml': flag('the dog bit, (people) ate') })).toEqual([])
  })

  it('points at a word of a set', () => {
    expect(errorsOf({ 'word-sets.yaml': 'people: [child, a gran]\n', 'red-flags/ate.yaml': flag('(people)') })).toEqual([{ code: 'NOT_HEARD_AS_WRITTEN', at: 'trees/word-sets.yaml:1:17', nearest: [] }])
  })
})
