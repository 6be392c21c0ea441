import { describe, expect, it } from 'vitest'
import { type PresenceChange, presenceOn } from '../../src/season/index.js'

function word(district: string, state: PresenceChange['state'], on: string): PresenceChange {
  return { problem: 'ash-dieback', district, state, on, by: 'sedge', why: 'seen' }
}

describe('the presence of a watch problem', () => {
  it('is not known where nothing was said', () => {
    expect(presenceOn([], 'holt-fen', ['eastmere'], '2026-05-14')).toBeNull()
    expect(presenceOn([word('larkmoor', 'present', '2026-01-01')], 'holt-fen', ['eastmere'], '2026-05-14')).toBeNull()
  })

  it('is what was said last, as of the day asked for', () => {
    const changes = [word('holt-fen', 'present', '2026-03-01'), word('holt-fen', 'not found', '2026-01-01'), word('holt-fen', 'widespread', '2026-06-01')]
    expect(presenceOn(changes, 'holt-fen', [], '2026-02-01')).toEqual({ state: 'not found', on: '2026-01-01', beside: null })
    expect(presenceOn(changes, 'holt-fen', [], '2026-05-14')).toEqual({ state: 'present', on: '2026-03-01', beside: null })
    expect(presenceOn([...changes, word('holt-fen', 'not found', '2026-03-01')], 'holt-fen', [], '2026-05-14')?.state).toBe('not found')
  })

  it('counts as found nearby once it is present next door, unless it was said later that it is not here', () => {
    const near = word('eastmere', 'present', '2026-04-01')
    expect(presenceOn([near], 'holt-fen', ['eastmere'], '2026-05-14')).toEqual({ state: 'found nearby', on: '2026-04-01', beside: 'eastmere' })
    expect(presenceOn([word('holt-fen', 'not found', '2026-01-01'), near], 'holt-fen', ['eastmere'], '2026-05-14')?.beside).toBe('eastmere')
    expect(presenceOn([near, word('holt-fen', 'not found', '2026-04-02')], 'holt-fen', ['eastmere'], '2026-05-14')?.state).toBe('not found')
    expect(presenceOn([near], 'holt-fen', ['eastmere'], '2026-03-31')).toBeNull()
    expect(presenceOn([word('eastmere', 'found nearby', '2026-04-01')], 'holt-fen', ['eastmere'], '2026-05-14')).toBeNull()
  })
})
