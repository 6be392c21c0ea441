import type { Response } from 'express'
import { RequestFault } from './request-fault.js'

/** How streams are kept. */
export interface StreamLimits {
  /** How often a sign of life is sent and the right to listen looked at, in milliseconds. */
  readonly beatMs: number
  /** How long one stream lasts; the browser opens the next by itself, perhaps with another process. */
  readonly lastsMs: number
  /** Most streams at once in this process. */
  readonly most: number
}

/** What a route that sends events answers. */
export interface LiveStream {
  /** Calls `send` for each event from now on; the result ends it. */
  readonly follow: (send: (event: object) => void) => () => void
  /** Sent first. */
  readonly first: object
  /** Whether whoever listens still may. */
  readonly isAllowed: () => Promise<boolean>
}

/** The open streams of one process. */
export interface LiveStreams {
  /** Sends events until the browser goes, may no longer listen, or `endAll` is called. */
  serve(response: Response, stream: LiveStream): void
  /** Ends every stream, for the end of the service. */
  endAll(): void
  readonly count: () => number
}

export const STREAM_LIMITS: StreamLimits = { beatMs: 20_000, lastsMs: 30 * 60_000, most: 1000 }

/** Whether a route answers with events. */
export function isEventRoute({ reply }: { readonly reply: unknown }): boolean {
  return typeof reply === 'object' && reply !== null && 'events' in reply
}

/** What a route of events answered; anything else is a fault of ours. */
export function asEvents(reply: unknown): Pick<LiveStream, 'first' | 'follow'> {
  if (typeof reply === 'object' && reply !== null && 'first' in reply && 'follow' in reply) {
    return reply as Pick<LiveStream, 'first' | 'follow'>
  }
  throw new RequestFault('UNEXPECTED')
}

/** Most bytes that wait for a slow browser before it is let go; it comes back and fetches everything. */
const MOST_WAITING = 64 * 1024

/** Keeps streams of server-sent events (WHATWG HTML, section 9.2). */
export function liveStreams({ beatMs, lastsMs, most }: StreamLimits = STREAM_LIMITS): LiveStreams {
  const open = new Set<() => void>()
  let isEnding = false
  return {
    serve(response, { follow, first, isAllowed }) {
      if (isEnding || open.size >= most) throw new RequestFault('TOO_MANY', { headers: { 'retry-after': '5' } })
      response.status(200).set({
        'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store', 'x-accel-buffering': 'no',
      })
      const send = (text: string): void => {
        if (response.writableLength > MOST_WAITING) end()
        else response.write(text)
      }
      const sendEvent = (event: object): void => { send(`event: change\ndata: ${JSON.stringify(event)}\n\n`) }
      const beat = setInterval(() => {
        send(': still here\n\n')
        // When the store does not answer, nothing is known against it.
        isAllowed().then((allowed) => { if (!allowed) end() }, () => undefined)
      }, beatMs)
      const last = setTimeout(() => { end() }, lastsMs)
      const stop = follow(sendEvent)
      const end = (): void => {
        clearInterval(beat)
        clearTimeout(last)
        stop()
        open.delete(end)
        response.end()
      }
      open.add(end)
      response.on('close', end)
      send('retry: 2000\n\n')
      sendEvent(first)
    },
    endAll() {
      isEnding = true
      for (const end of [...open]) end()
    },
    count: () => open.size,
  }
}
