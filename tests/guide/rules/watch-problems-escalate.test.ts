import { describe, expect, it } from 'vitest'
import { errorsOf } from '../lettuce-world.js'

const PHOTO = '{ escalate: "Take a photo, note the place and tell the office." }'

const watched = (cost: string, watch: string) => (text: string) =>
  text.replace('cost: ordinary', `cost: ${cost}`).replace('sources:', watch === '' ? 'sources: ' : `watch: ${watch}\nsources:`)

describe('rule: a watch problem says whom to tell', () => {
  it.each(['regulated', 'dangerous'])('accepts a %s problem that asks for a photo and the place', (cost) => {
    expect(errorsOf({ 'problems/slugs.yaml': watched(cost, PHOTO) })).toEqual([])
  })

  it('accepts a dangerous problem without a watch', () => {
    expect(errorsOf({ 'problems/slugs.yaml': watched('dangerous', '') })).toEqual([])
  })

  it.each([
    ['a regulated problem without a watch', 'regulated', '', '1:10'],
    ['a watch that does not say what to do', 'regulated', '{}', '15:1'],
    ['an escalation that asks for no photo', 'regulated', '{ escalate: "Tell the office." }', '15:20'],
    ['a watched problem of ordinary cost', 'ordinary', PHOTO, '1:10'],
    ['a watched problem that is only costly', 'costly', PHOTO, '1:10'],
  ])('points at %s', (_what, cost, watch, at) => {
    expect(errorsOf({ 'problems/slugs.yaml': (text) => `${watched(cost, watch)(text)}# changed\n` }))
      .toEqual([{ code: 'WATCH_WITHOUT_ESCALATION', at: `trees/problems/slugs.yaml:${at}`, nearest: [] }])
  })

  it('reports every such problem, not only the first', () => {
    expect(errorsOf({ 'problems/slugs.yaml': watched('regulated', ''), 'problems/tipburn.yaml': watched('regulated', '{}') })).toEqual([
      { code: 'WATCH_WITHOUT_ESCALATION', at: 'trees/problems/slugs.yaml:1:10', nearest: [] },
      { code: 'WATCH_WITHOUT_ESCALATION', at: 'trees/problems/tipburn.yaml:15:1', nearest: [] },
    ])
  })
})
