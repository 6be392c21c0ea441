import {
  AskBack, Colleagues, HandOn, KeptCases, KeptSuggestions, LiveChange, NoteForColleagues, OtherTicket, RecordResult, ReviewTicket,
  SendSample, SettleReview, SettleTicket, TicketContact, TicketList, TicketSearch, TicketView,
} from '../../../shared/index.js'
import { defineEventRoute, defineMemberRoute, defineRoute, type Route } from '../route.js'

/** What was handed to the specialists. Every change answers with the whole ticket as it stands afterwards. */
export const ticketRoutes: readonly Route[] = [
  // Before the routes of one ticket, whose number would match.
  defineEventRoute('/api/tickets/events', {
    summary: 'Server-sent events called "change": which ticket changed, for fetching it again. Tells of every process. '
      + 'After a break the browser connects again and fetches what it shows; nothing is sent twice.',
    event: LiveChange,
    handle: ({ desk }) => ({ first: { ticket: null, kind: 'anything', by: null } satisfies LiveChange, follow: desk.followTickets }),
  }),
  defineRoute('GET', '/api/tickets', {
    summary: 'Tickets that fit: urgent first, then the longest wait; settled ones with the last settled first.',
    query: TicketSearch, reply: TicketList,
    handle: ({ desk, query }) => desk.listTickets(query),
  }),
  defineMemberRoute('GET', '/api/tickets/:ticket', {
    summary: 'A whole ticket.',
    reply: TicketView,
    handle: ({ desk, part, member }) => desk.showTicket(part('ticket'), member),
  }),
  defineMemberRoute('GET', '/api/tickets/:ticket/contact', {
    summary: 'The asker\'s contact details. Each reading is written down.',
    reply: TicketContact,
    handle: ({ desk, part, member }) => desk.readContact(part('ticket'), member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/take', {
    summary: 'Takes a waiting ticket; one person gets it.',
    reply: TicketView,
    handle: ({ desk, part, member }) => desk.takeTicket(part('ticket'), member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/give-back', {
    summary: 'Gives a ticket back to the waiting ones.',
    reply: TicketView,
    handle: ({ desk, part, member }) => desk.giveBack(part('ticket'), member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/hand-on', {
    summary: 'Hands a ticket to a colleague.',
    body: HandOn, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.handOn(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/ask-back', {
    summary: 'Asks the asker: checks, photos or words. Their case opens again.',
    body: AskBack, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.askBack(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/samples', {
    summary: 'Notes a sample sent to a laboratory.',
    body: SendSample, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.sendSample(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/results', {
    summary: 'Records a laboratory\'s result.',
    body: RecordResult, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.recordResult(part('ticket'), body, member),
  }),
  defineRoute('POST', '/api/tickets/:ticket/review', {
    summary: 'What settling like this would leave for the casebook and the tree. Nothing is kept.',
    body: ReviewTicket, reply: SettleReview,
    handle: ({ desk, part, body }) => desk.reviewTicket(part('ticket'), body),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/settle', {
    summary: 'Settles a ticket with the answer that the asker will read.',
    body: SettleTicket, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.settleTicket(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/amend', {
    summary: 'Changes the answer of a settled ticket; the one before stays visible.',
    body: SettleTicket, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.amendTicket(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/reopen', {
    summary: 'Takes the answer back and opens the ticket again.',
    reply: TicketView,
    handle: ({ desk, part, member }) => desk.reopenTicket(part('ticket'), member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/notes', {
    summary: 'Adds a note for colleagues only.',
    body: NoteForColleagues, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.noteForColleagues(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/merge', {
    summary: 'Merges this repeat into another ticket of the same asker.',
    body: OtherTicket, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.mergeTicket(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/unmerge', {
    summary: 'Takes a merged ticket apart again.',
    reply: TicketView,
    handle: ({ desk, part, member }) => desk.unmergeTicket(part('ticket'), member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/link', {
    summary: 'Notes that another ticket has to do with this one.',
    body: OtherTicket, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.linkTicket(part('ticket'), body, member),
  }),
  defineMemberRoute('POST', '/api/tickets/:ticket/unlink', {
    summary: 'Takes such a note back.',
    body: OtherTicket, reply: TicketView,
    handle: ({ desk, part, body, member }) => desk.unlinkTicket(part('ticket'), body, member),
  }),
  defineRoute('GET', '/api/colleagues', {
    summary: 'Everyone at the bench to whom a ticket may be handed.',
    reply: Colleagues,
    handle: ({ desk }) => desk.listColleagues(),
  }),
  defineRoute('GET', '/api/casebook', {
    summary: 'Settled cases kept for the casebook, and all of them as one YAML file.',
    reply: KeptCases,
    handle: ({ desk }) => desk.keptCases(),
  }),
  defineRoute('GET', '/api/tree-suggestions', {
    summary: 'Suggestions kept for whoever writes the trees, the newest first.',
    reply: KeptSuggestions,
    handle: ({ desk }) => desk.keptSuggestions(),
  }),
]
