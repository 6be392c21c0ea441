import { Role } from '../../../shared/index.js'
import type { PersonRow } from '../../store/index.js'

/** A signed-in person. */
export interface Member {
  readonly id: number
  readonly name: string
  readonly role: Role
  /** True while their role needs one-time codes and they have none: then they may do nothing but set them up. */
  readonly mustSetUpCodes?: boolean
}

/** Reads a person from their row. */
export function memberFromRow(row: PersonRow): Member {
  return { id: row.id, name: row.name, role: Role.parse(row.role) }
}
