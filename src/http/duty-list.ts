import type { Desk } from '../desk/index.js'
import type { ScheduledDuty } from './duties.js'

const HOUR_MS = 3_600_000

/** What the service does by itself, and how often. */
export function dutiesOf(desk: Desk): readonly ScheduledDuty[] {
  return [
    { name: 'erase contacts', everyMs: HOUR_MS, run: async () => { await desk.eraseDueContacts() } },
  ]
}
