import { describe, expect, it } from 'vitest'
import type { SeeingNote } from '../../shared/index.js'
import { lateNote, seenWords } from '../../src/web/sheet/seen-lately.js'

const noteOf = (monday: string): SeeingNote => ({
  week: '2026-W20', monday, title: 'What we are seeing', lead: 'Roses.', problems: [], published: `${monday}T09:00:00Z`, updated: `${monday}T09:00:00Z`, invented: false,
})

describe('the note on a blank call sheet', () => {
  it('is the newest one, from its Monday to the Sunday of the week after', () => {
    const of = (today: string) => lateNote([noteOf('2026-05-11'), noteOf('2026-05-04')], today)
    expect([of('2026-05-11'), of('2026-05-17')].map((late) => late?.isThisWeek)).toEqual([true, true])
    expect([of('2026-05-18'), of('2026-05-24')].map((late) => late?.isThisWeek)).toEqual([false, false])
    expect(of('2026-05-18')?.note.monday).toBe('2026-05-11')
    expect(of('2026-05-25')).toBeNull()
  })

  it('is none before any is published, nor one of a week to come', () => {
    expect(lateNote([], '2026-05-11')).toBeNull()
    expect(lateNote([noteOf('2026-05-18')], '2026-05-17')).toBeNull()
  })

  it('says whether it is of this week or the last', () => {
    expect([true, false].map((isThisWeek) => seenWords({ note: noteOf('2026-05-11'), isThisWeek }))).toEqual(['What we are seeing this week', 'What we saw last week'])
  })
})
