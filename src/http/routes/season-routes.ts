import {
  ApproveNote, DistrictWeather, NoteSearch, NoteView, PlausibleSearch, PlausibleTable, PresenceTable, SeasonSearch, SeasonView, SeeingList, SetPresence, TakeBackNote, WatchNotices, WeekCounts, WeeksSearch,
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
  defineRoute('GET', '/api/season/weather', {
    summary: 'What the station of a district says of rain, warmth and weather for diseases, with everything that is missing.',
    query: PlausibleSearch, reply: DistrictWeather,
    handle: ({ desk, query }) => desk.showWeather(query.district),
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
  defineRoute('GET', '/api/season/note', {
    summary: 'The note of a week for everyone: as the service drafts it, and as it is published.',
    query: NoteSearch, reply: NoteView,
    handle: ({ desk, query }) => desk.showNote(query.week),
  }),
  defineMemberRoute('POST', '/api/season/note/approve', {
    summary: 'Lets everyone read a week\'s note, with the counts of this moment.',
    body: ApproveNote, reply: NoteView,
    handle: ({ desk, body, member }) => desk.approveNote(body, member),
  }),
  defineMemberRoute('POST', '/api/season/note/take-back', {
    summary: 'Takes a week\'s note back: nobody else can read it from then on.',
    body: TakeBackNote, reply: NoteView,
    handle: ({ desk, body, member }) => desk.takeBackNote(body, member),
  }),
  defineRoute('GET', '/api/seeing', {
    summary: 'What we are seeing: the approved notes of the last weeks, for everyone. The same stands at /seeing, /seeing.json and /seeing.atom.',
    reply: SeeingList,
    handle: ({ desk }) => desk.publicNotes(),
  }),
]
