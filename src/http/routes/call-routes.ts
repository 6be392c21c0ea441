import { CallList, PracticeCall, PracticeDone, PracticeTruth, SimilarCases } from '../../../shared/index.js'
import { defineMemberRoute, defineRoute, type Route } from '../route.js'

/** The calls on a volunteer's desk. */
export const callRoutes: readonly Route[] = [
  defineMemberRoute('GET', '/api/calls', {
    summary: 'Your open calls, newest first.',
    reply: CallList,
    handle: ({ desk, member }) => desk.listCalls(member),
  }),
  defineRoute('POST', '/api/practice/next', {
    summary: 'A worked case of the casebook to practise on, as its caller told it; none of those done while there are others. Nothing is kept.',
    body: PracticeDone, reply: PracticeCall,
    handle: ({ desk, body }) => desk.nextPractice(body.done),
  }),
  defineRoute('GET', '/api/practice/:practice', {
    summary: 'What the caller of a practised call would see, and how it truly ended.',
    reply: PracticeTruth,
    handle: ({ desk, part }) => desk.practiceTruth(part('practice')),
  }),
  defineMemberRoute('GET', '/api/cases/:link/similar', {
    summary: 'Settled cases of the last half year on the same plant, in the same district, the most alike first: what was seen and what it was.',
    reply: SimilarCases,
    handle: ({ desk, part, member }) => desk.similarCases(part('link'), member),
  }),
  defineMemberRoute('POST', '/api/calls/:link/close', {
    summary: 'Takes a call off your desk.',
    reply: CallList,
    handle: ({ desk, part, member }) => desk.closeCall(part('link'), member),
  }),
]
