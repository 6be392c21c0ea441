import { randomUUID } from 'node:crypto'
import type { RequestHandler } from 'express'
import type { Logger } from 'pino'
import { pinoHttp } from 'pino-http'
import { hiddenAddress } from './hidden-address.js'

/**
 * One line a request: number, method, address without secrets, status and time. Never a body, a cookie, a header, an
 * asker's words or network address.
 */
export function logRequests(log: Logger): RequestHandler {
  return pinoHttp({
    logger: log,
    genReqId: () => randomUUID(),
    customLogLevel: (_request, response) => (response.statusCode >= 500 ? 'error' : 'info'),
    wrapSerializers: false,
    serializers: {
      req: (request: { id: unknown; method: string; originalUrl?: string; url: string }) => (
        { id: request.id, method: request.method, url: hiddenAddress(request.originalUrl ?? request.url) }),
      res: (response: { statusCode: number }) => ({ statusCode: response.statusCode }),
      err: plainError,
    },
    // Should a header ever come in by another way, it is still not written out.
    redact: ['req.headers', 'res.headers'],
  })
}

// Only these fields: libraries hang request bodies and SQL parameters on their errors.
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { message: 'something that is not an error was thrown' }
  const { name, message, stack, cause } = error
  return { type: name, message, stack, ...(cause instanceof Error ? { cause: plainError(cause) } : {}) }
}
