import type { PhotoKept } from '../../../shared/index.js'
import { readReply, type Reply } from './reply.js'

interface Sending {
  readonly base: string
  readonly link: string
  /** Chosen once for this photo: sending it again with the same key keeps it once. */
  readonly key: string
  readonly file: Blob
  readonly credentials: 'omit' | 'same-origin'
  readonly language?: (() => string) | undefined
  /** Told the share sent so far, 0 to 1. */
  readonly onProgress: (share: number) => void
  readonly signal: AbortSignal
}

/** Sends one photo. `fetch` cannot tell how much of a body has gone, so this is the older way. Never throws. */
export function sendPhoto({ base, link, key, file, credentials, language, onProgress, signal }: Sending): Promise<Reply<PhotoKept>> {
  return new Promise(resolve => {
    const request = new XMLHttpRequest()
    const stop = () => request.abort()
    const end = (reply: Reply<PhotoKept>) => { signal.removeEventListener('abort', stop); resolve(reply) }
    request.open('PUT', `${base}/api/cases/${encodeURIComponent(link)}/photos/${key}`)
    // The wish is only for other origins: on our own pages a browser always sends what it has.
    request.withCredentials = credentials === 'same-origin'
    request.timeout = PATIENCE_MS
    if (language !== undefined) request.setRequestHeader('accept-language', language())
    request.upload.onprogress = event => { if (event.lengthComputable) onProgress(event.loaded / event.total) }
    request.onload = () => {
      const { status, statusText } = request
      void readReply<PhotoKept>(new Response(status === 204 ? null : request.responseText, { status, statusText })).then(end)
    }
    request.onerror = request.ontimeout = () => end({ ok: false, trouble: { kind: 'lost', detail: null } })
    request.onabort = () => end({ ok: false, trouble: { kind: 'stopped' } })
    signal.addEventListener('abort', stop)
    request.send(file)
  })
}

/** Twelve megabytes over a weak signal take minutes. */
const PATIENCE_MS = 300_000
