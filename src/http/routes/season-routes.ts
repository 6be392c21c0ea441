import {
  PlausibleSearch, PlausibleTable, PresenceTable, SeasonSearch, SeasonView, SetPresence, WatchNotices, WeekCounts, WeeksSearch,
} from '../../../shared/index.js'
import { defineMemberRoute, defineRoute, type Route } from '../route.js'

/** What this season is doing. Everyone of the helpline reads it; specialists say how far a watch problem has come. */
export const seasonRoutes: readonly Route[] = [
  defineRoute('GET', '/api/season', {
    summary: 'The year of every reported problem by ISO week, beside the same weeks of earlier years, with unusual rises marked.',
    query: SeasonSearch, reply: SeasonView,
    handle: ({ desk, query }) => desk.showSeason(query),
  }),
  defineRoute('GET', '/api/season/weeks', {
    summary: 'Reports by problem, plant, district and ISO week.',
    query: WeeksSearch, reply: WeekCounts,
    handle: ({ desk, query }) => desk.weekCounts(query),
  }),
  defineRoute('GET', '/api/season/plausible', {
    summary: 'What reports, presence and weather make likelier or less likely in a district today, with every reason.',
    query: PlausibleSearch, reply: PlausibleTable,
    handle: ({ desk, query }) => desk.showPlausible(query.district),
  }),
  defineRoute('GET', '/api/season/presence', {
    summary: 'How every watch problem stands in every district, with all that was said of it.',
    reply: PresenceTable,
    handle: ({ desk }) => desk.showPresence(),
  }),
  defineMemberRoute('POST', '/api/season/presence', {
    summary: 'Says how a watch problem stands in a district, from which day on, and why. What was said before stays.',
    body: SetPresence, reply: PresenceTable,
    handle: ({ desk, body, member }) => desk.setPresence(body, member),
  }),
  defineRoute('GET', '/api/season/notices', {
    summary: 'The first reports of watch problems by district and year, those not put aside first.',
    reply: WatchNotices,
    handle: ({ desk }) => desk.showNotices(),
  }),
  defineMemberRoute('POST', '/api/season/notices/:notice/seen', {
    summary: 'Puts a notice aside.',
    reply: WatchNotices,
    handle: ({ desk, part, member }) => desk.seeNotice(part('notice'), member),
  }),
]
