import type {
  AddWords, AnswerCheck, CarryOn, CaseView, ChangeLanguage, ComplaintRows, HandOver, HostRows, NoteCall, OpenCase, PhotoKept, RegionView, SettlePlace, TakeBack,
} from '../../../shared/index.js'
import type { Reply } from './reply.js'
import { createSender, type SenderOptions } from './sender.js'

/** The body of each kind of change to a case, by the last part of its address. */
export interface CaseChangeBodies {
  'place': SettlePlace
  'words': AddWords
  'answers': AnswerCheck
  'take-back': TakeBack
  'carry-on': CarryOn
  'hand-over': HandOver
  'notes': NoteCall
  'language': ChangeLanguage
}

/** What anybody may ask of the service. */
export interface CaseService {
  /** Address of the service, without a slash at the end. */
  readonly base: string
  region(signal?: AbortSignal): Promise<Reply<RegionView>>
  hosts(signal?: AbortSignal): Promise<Reply<HostRows>>
  complaints(host: string, signal?: AbortSignal): Promise<Reply<ComplaintRows>>
  openCase(body: OpenCase, signal?: AbortSignal): Promise<Reply<CaseView>>
  caseByLink(link: string, signal?: AbortSignal): Promise<Reply<CaseView>>
  /** Sends a photo under a key of the sender's own; `onProgress` is told the share sent, 0 to 1. */
  addPhoto(link: string, key: string, file: Blob, onProgress: (share: number) => void, signal: AbortSignal): Promise<Reply<PhotoKept>>
  removePhoto(link: string, photo: number): Promise<Reply<CaseView>>
  /** The file of a photo, or null when it cannot be had. */
  photo(link: string, photo: number, size: 'large' | 'small', signal: AbortSignal): Promise<Blob | null>
  changeCase<Path extends keyof CaseChangeBodies>(
    link: string, path: Path, body: CaseChangeBodies[Path], signal?: AbortSignal,
  ): Promise<Reply<CaseView>>
}

/** The askers' routes as functions. Nothing here throws: every failure is a reply with its trouble. */
export function createCaseService(options: SenderOptions): CaseService {
  const { get, post } = createSender(options)
  const part = encodeURIComponent
  return {
    base: options.base,
    region: signal => get('/api/region', signal),
    hosts: signal => get('/api/guide/hosts', signal),
    complaints: (host, signal) => get(`/api/guide/hosts/${part(host)}/complaints`, signal),
    openCase: (body, signal) => post('/api/cases', body, signal),
    caseByLink: (link, signal) => get(`/api/cases/${part(link)}`, signal),
    async addPhoto(link, key, file, onProgress, signal) {
      // Few askers send one: its script stays out of the first paint.
      const part = await import('./send-photo.js').catch(() => null)
      return part === null ? { ok: false, trouble: { kind: 'lost', detail: null } } : part.sendPhoto({ ...options, link, key, file, onProgress, signal })
    },
    removePhoto: (link, photo) => post(`/api/cases/${part(link)}/photos/${photo}/remove`),
    async photo(link, photo, size, signal) {
      try {
        const response = await fetch(`${options.base}/api/cases/${part(link)}/photos/${photo}/${size}`, { credentials: options.credentials, signal })
        return response.ok ? await response.blob() : null
      } catch {
        return null
      }
    },
    changeCase: (link, path, body, signal) => post(`/api/cases/${part(link)}/${path}`, body, signal),
  }
}
