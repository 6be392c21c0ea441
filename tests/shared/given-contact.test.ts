import { expect, it } from 'vitest'
import { givenContact } from '../../shared/index.js'

it('a given contact holds the fields with something in them, trimmed, and is nothing when none has', () => {
  expect(givenContact({ name: ' Wren ', email: '', phone: '   ', callTime: 'after six', note: 'not a field' })).toEqual({ name: 'Wren', callTime: 'after six' })
  expect(givenContact({ name: ' ', email: '' })).toBeNull()
  expect(givenContact({})).toBeNull()
})
