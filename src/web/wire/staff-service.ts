import type {
  CallList, GuideState, Person, ProblemRows, SessionView, SettleTicket, SignIn, Suggestions, TicketContact, TicketList, TicketRow, TicketView,
} from '../../../shared/index.js'
import { createCaseService, type CaseService } from './case-service.js'
import type { Reply } from './reply.js'
import { createSender } from './sender.js'

/** What volunteers and specialists may ask of the service besides. */
export interface StaffService extends CaseService {
  suggest(words: string, signal?: AbortSignal): Promise<Reply<Suggestions>>
  /** Who this browser is signed in as; null for nobody. */
  session(): Promise<Reply<SessionView>>
  guideState(): Promise<Reply<GuideState>>
  signIn(body: SignIn): Promise<Reply<Person>>
  signOut(): Promise<Reply<undefined>>
  calls(): Promise<Reply<CallList>>
  closeCall(link: string): Promise<Reply<CallList>>
  tickets(state: TicketRow['state']): Promise<Reply<TicketList>>
  ticketContact(ticket: string): Promise<Reply<TicketContact>>
  ticket(ticket: string): Promise<Reply<TicketView>>
  takeTicket(ticket: string): Promise<Reply<TicketView>>
  settleTicket(ticket: string, body: SettleTicket): Promise<Reply<TicketView>>
  problems(host: string): Promise<Reply<ProblemRows>>
}

/** The staff's routes as functions, for our own pages only. */
export function createStaffService(): StaffService {
  const options = { base: '', credentials: 'same-origin' } as const
  const { get, post } = createSender(options)
  const part = encodeURIComponent
  return {
    ...createCaseService(options),
    suggest: (words, signal) => post('/api/suggest', { words }, signal),
    session: () => get('/api/session'),
    guideState: () => get('/api/guide/state'),
    signIn: body => post('/api/sign-in', body),
    signOut: () => post('/api/sign-out'),
    calls: () => get('/api/calls'),
    closeCall: link => post(`/api/calls/${part(link)}/close`),
    tickets: state => get(`/api/tickets?state=${part(state)}`),
    ticketContact: ticket => get(`/api/tickets/${part(ticket)}/contact`),
    ticket: ticket => get(`/api/tickets/${part(ticket)}`),
    takeTicket: ticket => post(`/api/tickets/${part(ticket)}/take`),
    settleTicket: (ticket, body) => post(`/api/tickets/${part(ticket)}/settle`, body),
    problems: host => get(`/api/guide/hosts/${part(host)}/problems`),
  }
}
