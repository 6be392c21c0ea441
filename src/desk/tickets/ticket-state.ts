import { TicketState } from '../../../shared/index.js'
import type { z } from 'zod'
import type { TicketRecord } from '../../store/index.js'

/** Where a ticket stands. */
export function ticketStateOf(ticket: Pick<TicketRecord, 'state'>): z.infer<typeof TicketState> {
  return TicketState.parse(ticket.state)
}
