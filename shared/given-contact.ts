import type { Contact } from './case.js'

const FIELDS = ['name', 'email', 'phone', 'callTime'] as const

/** The contact fields that hold something, without spaces round it; null when none does. Text without a schema, so that the panel can use it. */
export function givenContact(fields: Readonly<Partial<Record<string, string>>>): Contact | null {
  const given = FIELDS.flatMap(name => {
    const text = fields[name]?.trim() ?? ''
    return text === '' ? [] : [[name, text] as const]
  })
  return given.length === 0 ? null : Object.fromEntries(given)
}
