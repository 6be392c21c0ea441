import type { CallList, GuideState, Language, Me, PracticeCall, PracticeTruth, ProblemRows, SeeingList, SessionView, SignIn, SimilarCases, Suggestions } from '../../../shared/index.js'
import { createCaseService, type CaseService } from './case-service.js'
import { createPeopleService, type PeopleService } from './people-service.js'
import type { Reply } from './reply.js'
import { createSender } from './sender.js'
import { createTicketService, type TicketService } from './ticket-service.js'

/** What volunteers and specialists may ask of the service besides. */
export interface StaffService extends CaseService, TicketService, PeopleService {
  suggest(words: string, signal?: AbortSignal): Promise<Reply<Suggestions>>
  /** Who this browser is signed in as; null for nobody. */
  session(): Promise<Reply<SessionView>>
  guideState(): Promise<Reply<GuideState>>
  me(): Promise<Reply<Me>>
  signIn(body: SignIn): Promise<Reply<Me>>
  signOut(): Promise<Reply<undefined>>
  calls(): Promise<Reply<CallList>>
  closeCall(link: string): Promise<Reply<CallList>>
  /** With their advice in a language. */
  problems(host: string, language?: Language): Promise<Reply<ProblemRows>>
  similarCases(link: string): Promise<Reply<SimilarCases>>
  /** The weekly notes that everyone may read, the newest first. */
  seeing(): Promise<Reply<SeeingList>>
  /** A worked case to practise on, none of those done while there are others. */
  nextPractice(done: readonly string[]): Promise<Reply<PracticeCall>>
  practiceTruth(practice: string): Promise<Reply<PracticeTruth>>
}

/** The staff's routes as functions, for our own pages only. */
export function createStaffService(): StaffService {
  // The people of the helpline work in English, whatever their browser says.
  const options = { base: '', credentials: 'same-origin', language: () => 'en' } as const
  const sender = createSender(options)
  const { get, post } = sender
  const part = encodeURIComponent
  return {
    ...createCaseService(options),
    ...createTicketService(sender),
    ...createPeopleService(sender),
    suggest: (words, signal) => post('/api/suggest', { words }, signal),
    me: () => get('/api/me'),
    session: () => get('/api/session'),
    guideState: () => get('/api/guide/state'),
    signIn: body => post('/api/sign-in', body),
    signOut: () => post('/api/sign-out'),
    calls: () => get('/api/calls'),
    closeCall: link => post(`/api/calls/${part(link)}/close`),
    nextPractice: done => post('/api/practice/next', { done }),
    practiceTruth: practice => get(`/api/practice/${part(practice)}`),
    seeing: () => get('/api/seeing'),
    similarCases: link => get(`/api/cases/${part(link)}/similar`),
    problems: (host, language) => get(`/api/guide/hosts/${part(host)}/problems${language === undefined ? '' : `?language=${language}`}`),
  }
}
