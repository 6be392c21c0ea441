import { isUtf8 } from 'node:buffer'
import express, { type Request, type Response } from 'express'
import { RequestFault } from './request-fault.js'

/** Largest body taken: the longest words are 4,000 characters, and JSON may need six bytes for each. */
const MOST_BYTES = 64 * 1024

// Compressed bodies are refused: nothing this small needs it, and unpacking is a way to be flooded.
const parseJson = express.json({ limit: MOST_BYTES, inflate: false, reviver: refuseNul, verify: refuseBrokenText })

/** Reads a request's JSON body. Undefined when there is none. */
export async function jsonBody(request: Request, response: Response): Promise<unknown> {
  if (request.get('content-length') === '0') return undefined
  if (request.is('application/json') === false) throw new RequestFault('NOT_JSON')
  await new Promise<void>((resolve, reject) => {
    parseJson(request, response, (fault?: unknown) => {
      if (fault === undefined) resolve()
      else reject(fault instanceof Error ? fault : new Error('the body parser failed'))
    })
  })
  return request.body
}

/** Bytes that are no UTF-8 would be kept as marks for 'unreadable', and the asker's word would be lost without a sound. */
function refuseBrokenText(_request: unknown, _response: unknown, body: Buffer): void {
  if (!isUtf8(body)) throw Object.assign(new Error('not UTF-8'), { status: 400, type: 'body.not.utf8' })
}

/** PostgreSQL cannot keep the character NUL in text, and nobody types it. */
function refuseNul(_key: string, value: unknown): unknown {
  if (typeof value === 'string' && value.includes('\u0000')) throw new SyntaxError('the character NUL')
  return value
}
