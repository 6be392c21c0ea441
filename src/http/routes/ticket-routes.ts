import { z } from 'zod'
import { SettleTicket, TicketList, TicketState, TicketView } from '../../../shared/index.js'
import { defineRoute, type Route, signedIn } from '../route.js'

/** What was handed to the specialists. */
export const ticketRoutes: readonly Route[] = [
  defineRoute('GET', '/api/tickets', {
    summary: 'Tickets in one state: urgent first, then oldest; settled ones with the last settled first.',
    query: z.object({ state: TicketState.default('waiting') }), reply: TicketList,
    handle: ({ desk, query }) => desk.listTickets(query.state),
  }),
  defineRoute('GET', '/api/tickets/:ticket', {
    summary: 'A whole ticket.',
    reply: TicketView,
    handle: (asked) => asked.desk.showTicket(asked.part('ticket'), signedIn(asked)),
  }),
  defineRoute('POST', '/api/tickets/:ticket/take', {
    summary: 'Takes a waiting ticket; one person gets it.',
    reply: TicketView,
    handle: (asked) => asked.desk.takeTicket(asked.part('ticket'), signedIn(asked)),
  }),
  defineRoute('POST', '/api/tickets/:ticket/settle', {
    summary: 'Settles a ticket with the answer that the asker will read.',
    body: SettleTicket, reply: TicketView,
    handle: (asked) => asked.desk.settleTicket(asked.part('ticket'), asked.body, signedIn(asked)),
  }),
]
