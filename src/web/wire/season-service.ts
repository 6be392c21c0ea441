import type { ApproveNote, DistrictWeather, NoteView, PlausibleTable, PresenceTable, SeasonView, SetPresence, WatchNotices } from '../../../shared/index.js'
import type { Reply } from './reply.js'
import type { Sender } from './sender.js'

/** What the season page asks of the service. */
export interface SeasonService {
  /** A year of weekly reports, of one district or of all, that ends with a week; this week when none is named. */
  season(district: string | null, until: string | null): Promise<Reply<SeasonView>>
  presence(): Promise<Reply<PresenceTable>>
  setPresence(body: SetPresence): Promise<Reply<PresenceTable>>
  watchNotices(): Promise<Reply<WatchNotices>>
  putNoticeAside(notice: string): Promise<Reply<WatchNotices>>
  plausible(district: string): Promise<Reply<PlausibleTable>>
  weather(district: string): Promise<Reply<DistrictWeather>>
  /** The note of a week for everyone; of this week when none is named. */
  note(week: string | null): Promise<Reply<NoteView>>
  approveNote(body: ApproveNote): Promise<Reply<NoteView>>
  takeBackNote(week: string): Promise<Reply<NoteView>>
}

/** The season's routes as functions. */
export function createSeasonService({ get, post }: Sender): SeasonService {
  return {
    season: (district, until) => get(`/api/season?${new URLSearchParams({ district: district ?? '', until: until ?? '' })}`),
    presence: () => get('/api/season/presence'),
    setPresence: body => post('/api/season/presence', body),
    watchNotices: () => get('/api/season/notices'),
    putNoticeAside: notice => post(`/api/season/notices/${encodeURIComponent(notice)}/seen`),
    plausible: district => get(`/api/season/plausible?${new URLSearchParams({ district })}`),
    note: week => get(`/api/season/note${week === null ? '' : `?${new URLSearchParams({ week })}`}`),
    approveNote: body => post('/api/season/note/approve', body),
    takeBackNote: week => post('/api/season/note/take-back', { week }),
    weather: district => get(`/api/season/weather?${new URLSearchParams({ district })}`),
  }
}
