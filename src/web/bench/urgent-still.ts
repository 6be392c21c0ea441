import type { TicketView } from '../../../shared/index.js'

/** Whether a ticket still presses: what was urgent and is settled or merged waits for nobody. */
export function isUrgentStill({ urgent, state }: Pick<TicketView, 'urgent' | 'state'>): boolean {
  return urgent && state !== 'settled' && state !== 'merged'
}
