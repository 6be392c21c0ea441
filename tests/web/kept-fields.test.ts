import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { forgetFields, readFields, writeFields } from '../../src/web/case/kept-fields.js'

const empty = { text: '', checks: [] as readonly string[], photos: false }

describe('what is written in a form that is left', () => {
  const kept = new Map<string, string>()
  beforeEach(() => vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => kept.set(key, value), removeItem: (key: string) => kept.delete(key),
  }))
  afterEach(() => { vi.unstubAllGlobals(); kept.clear() })

  it('is there when the form opens again, and gone once it was sent', () => {
    writeFields('ticket 1 note', { ...empty, text: 'Half a note' }, 'tab')
    expect(readFields('ticket 1 note', empty).text).toBe('Half a note')
    expect(readFields('ticket 2 note', empty)).toEqual(empty)
    forgetFields('ticket 1 note')
    expect(readFields('ticket 1 note', empty)).toEqual(empty)
    expect(kept.size).toBe(0)
  })

  it('never reaches the tab’s storage where it is a contact', () => {
    writeFields('call 1 hand over', { email: 'reed@larkmoor.example' }, 'screen')
    expect(readFields('call 1 hand over', { email: '' }).email).toBe('reed@larkmoor.example')
    expect(kept.size).toBe(0)
    forgetFields('call 1 hand over')
  })

  it('is read after a reload, field by field, without what no longer fits', () => {
    kept.set('frondline form: ticket 9 ask back', JSON.stringify({ text: 'Which side?', checks: 'all', photos: true, more: 1 }))
    expect(readFields('ticket 9 ask back', empty)).toEqual({ text: 'Which side?', checks: [], photos: true })
    kept.set('frondline form: ticket 8 note', 'not JSON')
    expect(readFields('ticket 8 note', empty)).toEqual(empty)
  })
})
