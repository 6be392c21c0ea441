import express, { type Request, type Response } from 'express'
import { RequestFault } from './request-fault.js'

/** Largest body taken: the longest words are 4,000 characters, and JSON may need six bytes for each. */
const MOST_BYTES = 64 * 1024

// Compressed bodies are refused: nothing this small needs it, and unpacking is a way to be flooded.
const parseJson = express.json({ limit: MOST_BYTES, inflate: false, reviver: refuseNul })

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

/** PostgreSQL cannot keep the character NUL in text, and nobody types it. */
function refuseNul(_key: string, value: unknown): unknown {
  if (typeof value === 'string' && value.includes('\u0000')) throw new SyntaxError('the character NUL')
  return value
}
