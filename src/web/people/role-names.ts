import type { Role } from '../../../shared/index.js'

/** The roles with what each may do. */
export const roleNames: readonly { readonly role: Role, readonly words: string, readonly may: string }[] = [
  { role: 'volunteer', words: 'Volunteer', may: 'takes calls' },
  { role: 'specialist', words: 'Specialist', may: 'answers tickets' },
  { role: 'administrator', words: 'Administrator', may: 'answers tickets, and looks after people and settings' },
]
