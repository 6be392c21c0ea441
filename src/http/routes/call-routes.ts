import { CallList, SimilarCases } from '../../../shared/index.js'
import { defineRoute, type Route, signedIn } from '../route.js'

/** The calls on a volunteer's desk. */
export const callRoutes: readonly Route[] = [
  defineRoute('GET', '/api/calls', {
    summary: 'Your open calls, newest first.',
    reply: CallList,
    handle: (asked) => asked.desk.listCalls(signedIn(asked)),
  }),
  defineRoute('GET', '/api/cases/:link/similar', {
    summary: 'Settled cases of the last half year on the same plant, in the same district, the most alike first: what was seen and what it was.',
    reply: SimilarCases,
    handle: (asked) => asked.desk.similarCases(asked.part('link'), signedIn(asked)),
  }),
  defineRoute('POST', '/api/calls/:link/close', {
    summary: 'Takes a call off your desk.',
    reply: CallList,
    handle: (asked) => asked.desk.closeCall(asked.part('link'), signedIn(asked)),
  }),
]
