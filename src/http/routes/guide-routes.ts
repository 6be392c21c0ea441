import { CheckRows, ComplaintRows, GuideState, HostRows, InLanguage, type Language, ProblemRows, RegionView, Suggest, Suggestions } from '../../../shared/index.js'
import type { Who } from '../../desk/index.js'
import { defineRoute, type Route } from '../route.js'

/** What the guide knows, as lists to choose from. */
export const guideRoutes: readonly Route[] = [
  defineRoute('GET', '/api/region', {
    summary: 'The region: its helpline, districts and units.',
    reply: RegionView,
    handle: ({ desk, who, language }) => desk.region(spokenTo(who, language())),
  }),
  defineRoute('GET', '/api/guide/hosts', {
    summary: 'Every plant in the guide.',
    reply: HostRows,
    handle: ({ desk, who, language }) => desk.hosts(spokenTo(who, language())),
  }),
  defineRoute('GET', '/api/guide/hosts/:host/complaints', {
    summary: 'The complaints that can start a plant\'s tree.',
    reply: ComplaintRows,
    handle: ({ desk, part, who, language }) => desk.complaints(part('host'), spokenTo(who, language())),
  }),
  defineRoute('GET', '/api/guide/hosts/:host/problems', {
    summary: 'A plant\'s problems with their advice, in the language asked for; those of every plant for the host "any".',
    query: InLanguage, reply: ProblemRows,
    handle: ({ desk, part, query }) => desk.problems(part('host'), query.language),
  }),
  defineRoute('GET', '/api/guide/hosts/:host/checks', {
    summary: 'The checks that tell a plant\'s problems apart; all checks for the host "any".',
    reply: CheckRows,
    handle: ({ desk, part }) => desk.checks(part('host')),
  }),
  defineRoute('GET', '/api/guide/state', {
    summary: 'Which guide is in use since when, and a later change that was not taken up.',
    reply: GuideState,
    handle: ({ guideState }) => guideState(),
  }),
  defineRoute('POST', '/api/suggest', {
    summary: 'The plants, complaints and warnings heard in some words. Nothing is kept.',
    body: Suggest, reply: Suggestions, limit: 'suggest',
    handle: ({ desk, body }) => desk.suggest(body.words),
  }),
]

/** The people of the helpline read the guide as it was written; everybody else in the language that they ask for. */
function spokenTo(who: Who, language: Language): Language | undefined {
  return who === null ? language : undefined
}
