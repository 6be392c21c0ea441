import type {
  AskBack, CheckRows, Colleagues, HandOn, KeptCases, KeptSuggestions, NoteForColleagues, OtherTicket, RecordResult, ReviewTicket,
  SendSample, SettleReview, SettleTicket, TicketContact, TicketList, TicketView,
} from '../../../shared/index.js'
import type { Reply } from './reply.js'
import type { Sender } from './sender.js'

/** The body of each kind of change to a ticket, by the last part of its address. */
export interface TicketChangeBodies {
  'take': undefined
  'give-back': undefined
  'hand-on': HandOn
  'ask-back': AskBack
  'samples': SendSample
  'results': RecordResult
  'settle': SettleTicket
  'amend': SettleTicket
  'reopen': undefined
  'notes': NoteForColleagues
  'merge': OtherTicket
  'unmerge': undefined
  'link': OtherTicket
  'unlink': OtherTicket
}

/** What is looked for among the tickets; an empty word looks for everything. */
export interface TicketWanted {
  readonly state: string
  readonly words: string
  readonly host: string
  readonly problem: string
  readonly district: string
  readonly with: string
  readonly from: string
  readonly until: string
}

/** What specialists may ask of the service. */
export interface TicketService {
  tickets(wanted: Partial<TicketWanted>): Promise<Reply<TicketList>>
  ticket(ticket: string): Promise<Reply<TicketView>>
  /** Each reading is written down. */
  ticketContact(ticket: string): Promise<Reply<TicketContact>>
  changeTicket<Path extends keyof TicketChangeBodies>(ticket: string, path: Path, body: TicketChangeBodies[Path]): Promise<Reply<TicketView>>
  reviewTicket(ticket: string, body: ReviewTicket): Promise<Reply<SettleReview>>
  colleagues(): Promise<Reply<Colleagues>>
  checks(host: string): Promise<Reply<CheckRows>>
  keptCases(): Promise<Reply<KeptCases>>
  keptSuggestions(): Promise<Reply<KeptSuggestions>>
}

/** The tickets' routes as functions. */
export function createTicketService({ get, post }: Sender): TicketService {
  const part = encodeURIComponent
  return {
    tickets: wanted => get(`/api/tickets?${new URLSearchParams(Object.entries(wanted).filter(([, word]) => word !== '')).toString()}`),
    ticket: ticket => get(`/api/tickets/${part(ticket)}`),
    ticketContact: ticket => get(`/api/tickets/${part(ticket)}/contact`),
    changeTicket: (ticket, path, body) => post(`/api/tickets/${part(ticket)}/${path}`, body),
    reviewTicket: (ticket, body) => post(`/api/tickets/${part(ticket)}/review`, body),
    colleagues: () => get('/api/colleagues'),
    checks: host => get(`/api/guide/hosts/${part(host)}/checks`),
    keptCases: () => get('/api/casebook'),
    keptSuggestions: () => get('/api/tree-suggestions'),
  }
}
