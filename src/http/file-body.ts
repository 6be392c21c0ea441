import type { Request } from 'express'
import { RequestFault } from './request-fault.js'

/** Limits for files that are being sent. */
export interface FileLimits {
  /** Largest file, in bytes. */
  readonly mostBytes: number
  /** Longest silence of a sender, in milliseconds. */
  readonly silenceMs: number
  /** Most bytes that all senders together may have under way in this process. */
  readonly mostUnderWay: number
}

/** Reads the bodies of requests that are files. They are held in memory alone, so nothing of them outlives the request. */
export interface FileReader {
  read(request: Request): Promise<Uint8Array>
}

/** Ten of the largest photos; a sender beyond that is asked to come back in a moment. */
export const MOST_BYTES_UNDER_WAY = 128 * 1024 * 1024
export const SILENCE_MS = 30_000

/** A reader of files; `read` throws a RequestFault when the file is too large, stops coming, or must come back later. */
export function fileReader({ mostBytes, silenceMs, mostUnderWay }: FileLimits): FileReader {
  let underWay = 0
  return {
    read(request) {
      if (Number(request.get('content-length') ?? 0) > mostBytes) return Promise.reject(tooLarge(mostBytes))
      if ((request.get('content-encoding') ?? 'identity') !== 'identity') return Promise.reject(new RequestFault('BAD_REQUEST'))
      return new Promise((resolve, reject) => {
        const chunks: Buffer[] = []
        let size = 0
        let isOver = false
        let silence = setTimeout(onSilence, silenceMs)
        request.on('data', onData).once('end', onEnd).once('aborted', onGone).once('error', onGone)

        function onData(chunk: Buffer): void {
          clearTimeout(silence)
          silence = setTimeout(onSilence, silenceMs)
          size += chunk.length
          underWay += chunk.length
          if (size > mostBytes) finish(() => { reject(tooLarge(mostBytes)) })
          else if (underWay > mostUnderWay) finish(() => { reject(tooMany()) })
          else chunks.push(chunk)
        }
        function onEnd(): void {
          finish(() => { resolve(Buffer.concat(chunks, size)) })
        }
        function onGone(): void {
          finish(() => { reject(new RequestFault('BAD_REQUEST')) })
        }
        function onSilence(): void {
          finish(() => { reject(new RequestFault('BAD_REQUEST', { headers: { connection: 'close' } })) })
        }
        function finish(settle: () => void): void {
          // A sender who breaks off is told of twice, as 'aborted' and as 'error': what they sent is given back once.
          if (isOver) return
          isOver = true
          clearTimeout(silence)
          request.off('data', onData).off('end', onEnd).off('aborted', onGone)
          underWay -= size
          settle()
        }
      })
    },
  }
}

function tooLarge(mostBytes: number): RequestFault {
  // What is still on its way is not worth reading.
  return new RequestFault('FILE_TOO_LARGE', {
    words: { most: `${Math.floor(mostBytes / 1024 / 1024)} MB` }, headers: { connection: 'close' },
  })
}

function tooMany(): RequestFault {
  return new RequestFault('TOO_MANY', { headers: { 'retry-after': '10', connection: 'close' } })
}
