import { readReply, type Reply } from './reply.js'

export interface SenderOptions {
  /** Address of the service, without a slash at the end. */
  readonly base: string
  /** 'omit' for askers: a volunteer who tries the panel must not turn the question into one of their calls. */
  readonly credentials: 'omit' | 'same-origin'
  /** The language that replies are wanted in, asked for each request; left out, the browser says what its reader speaks. */
  readonly language?: () => string
}

export interface Sender {
  get<Value>(path: string, signal?: AbortSignal): Promise<Reply<Value>>
  post<Value>(path: string, body?: object, signal?: AbortSignal): Promise<Reply<Value>>
}

/** Sends requests to one service. Never throws: what goes wrong is in the reply. */
export function createSender({ base, credentials, language }: SenderOptions): Sender {
  async function send<Value>(method: 'GET' | 'POST', path: string, body?: object, signal?: AbortSignal): Promise<Reply<Value>> {
    const patience = AbortSignal.timeout(PATIENCE_MS)
    try {
      const response = await fetch(base + path, {
        method, credentials,
        cache: 'no-store',
        signal: signal === undefined ? patience : AbortSignal.any([signal, patience]),
        // Pages elsewhere may send this header without asking first (Fetch standard, CORS-safelisted request-header).
        headers: { ...(language === undefined ? {} : { 'accept-language': language() }), ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      })
      return await readReply<Value>(response)
    } catch {
      return { ok: false, trouble: signal?.aborted === true ? { kind: 'stopped' } : { kind: 'lost', detail: null } }
    }
  }
  return {
    get: (path, signal) => send('GET', path, undefined, signal),
    post: (path, body, signal) => send('POST', path, body, signal),
  }
}

/** A phone on a weak signal may need many seconds; longer than this and the asker is better told. */
const PATIENCE_MS = 15_000
