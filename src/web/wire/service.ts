import type {
  AddWords, AnswerCheck, CallList, CarryOn, CaseView, ComplaintRows, HandOver, HostRows, NoteCall, OpenCase, Person,
  ProblemRows, RegionView, SettlePlace, SettleTicket, SignIn, Suggestions, TicketList, TicketView,
} from '../../../shared/index.js'
import { readReply, type Reply } from './reply.js'

/** The body of each kind of change to a case, by the last part of its address. */
export interface CaseChangeBodies {
  'place': SettlePlace
  'words': AddWords
  'answers': AnswerCheck
  'carry-on': CarryOn
  'hand-over': HandOver
  'notes': NoteCall
}

export interface Service {
  /** Address of the service, without a slash at the end. */
  readonly base: string
  region(signal?: AbortSignal): Promise<Reply<RegionView>>
  hosts(signal?: AbortSignal): Promise<Reply<HostRows>>
  complaints(host: string, signal?: AbortSignal): Promise<Reply<ComplaintRows>>
  suggest(words: string, signal?: AbortSignal): Promise<Reply<Suggestions>>
  openCase(body: OpenCase, signal?: AbortSignal): Promise<Reply<CaseView>>
  caseByLink(link: string, signal?: AbortSignal): Promise<Reply<CaseView>>
  changeCase<Path extends keyof CaseChangeBodies>(
    link: string, path: Path, body: CaseChangeBodies[Path], signal?: AbortSignal,
  ): Promise<Reply<CaseView>>
  me(): Promise<Reply<Person>>
  signIn(body: SignIn): Promise<Reply<Person>>
  signOut(): Promise<Reply<undefined>>
  calls(): Promise<Reply<CallList>>
  closeCall(link: string): Promise<Reply<CallList>>
  tickets(state: 'waiting' | 'taken' | 'settled'): Promise<Reply<TicketList>>
  ticket(ticket: string): Promise<Reply<TicketView>>
  takeTicket(ticket: string): Promise<Reply<TicketView>>
  settleTicket(ticket: string, body: SettleTicket): Promise<Reply<TicketView>>
  problems(host: string): Promise<Reply<ProblemRows>>
}

export interface ServiceOptions {
  readonly base: string
  /** 'omit' for askers: a volunteer who tries the panel must not turn the question into one of their calls. */
  readonly credentials: 'omit' | 'same-origin'
}

/** The service's routes as functions. Nothing here throws: every failure is a reply with its trouble. */
export function createService({ base, credentials }: ServiceOptions): Service {
  async function send<Value>(method: 'GET' | 'POST', path: string, body?: object, signal?: AbortSignal): Promise<Reply<Value>> {
    const patience = AbortSignal.timeout(PATIENCE_MS)
    try {
      const response = await fetch(base + path, {
        method, credentials,
        cache: 'no-store',
        signal: signal === undefined ? patience : AbortSignal.any([signal, patience]),
        ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
      })
      return await readReply<Value>(response)
    } catch {
      return { ok: false, trouble: { kind: signal?.aborted === true ? 'stopped' : 'lost' } }
    }
  }
  const get = <Value>(path: string, signal?: AbortSignal) => send<Value>('GET', path, undefined, signal)
  const post = <Value>(path: string, body?: object, signal?: AbortSignal) => send<Value>('POST', path, body, signal)
  const part = encodeURIComponent

  return {
    base,
    region: signal => get('/api/region', signal),
    hosts: signal => get('/api/guide/hosts', signal),
    complaints: (host, signal) => get(`/api/guide/hosts/${part(host)}/complaints`, signal),
    suggest: (words, signal) => post('/api/suggest', { words }, signal),
    openCase: (body, signal) => post('/api/cases', body, signal),
    caseByLink: (link, signal) => get(`/api/cases/${part(link)}`, signal),
    changeCase: (link, path, body, signal) => post(`/api/cases/${part(link)}/${path}`, body, signal),
    me: () => get('/api/me'),
    signIn: body => post('/api/sign-in', body),
    signOut: () => post('/api/sign-out'),
    calls: () => get('/api/calls'),
    closeCall: link => post(`/api/calls/${part(link)}/close`),
    tickets: state => get(`/api/tickets?state=${state}`),
    ticket: ticket => get(`/api/tickets/${part(ticket)}`),
    takeTicket: ticket => post(`/api/tickets/${part(ticket)}/take`),
    settleTicket: (ticket, body) => post(`/api/tickets/${part(ticket)}/settle`, body),
    problems: host => get(`/api/guide/hosts/${part(host)}/problems`),
  }
}

/** A phone on a weak signal may need many seconds; longer than this and the asker is better told. */
const PATIENCE_MS = 15_000
