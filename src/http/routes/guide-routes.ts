import { CheckRows, ComplaintRows, GuideState, HostRows, ProblemRows, RegionView, Suggest, Suggestions } from '../../../shared/index.js'
import { defineRoute, type Route } from '../route.js'

/** What the guide knows, as lists to choose from. */
export const guideRoutes: readonly Route[] = [
  defineRoute('GET', '/api/region', {
    summary: 'The region: its helpline, districts and units.',
    reply: RegionView,
    handle: ({ desk }) => desk.region(),
  }),
  defineRoute('GET', '/api/guide/hosts', {
    summary: 'Every plant in the guide.',
    reply: HostRows,
    handle: ({ desk }) => desk.hosts(),
  }),
  defineRoute('GET', '/api/guide/hosts/:host/complaints', {
    summary: 'The complaints that can start a plant\'s tree.',
    reply: ComplaintRows,
    handle: ({ desk, part }) => desk.complaints(part('host')),
  }),
  defineRoute('GET', '/api/guide/hosts/:host/problems', {
    summary: 'A plant\'s problems with their advice; those of every plant for the host "any".',
    reply: ProblemRows,
    handle: ({ desk, part }) => desk.problems(part('host')),
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
