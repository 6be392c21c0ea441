import { randomUUID } from 'node:crypto'
import type { Express, Request, RequestHandler } from 'express'
import type { Logger } from 'pino'
import { pinoHttp } from 'pino-http'
import { hiddenAddress } from './hidden-address.js'

/** How a request, its response and an error are written out: never a body, a cookie, a header, words or an address. */
const serializers = {
  req: (request: { id: unknown; method: string; originalUrl?: string; url: string }) => (
    { id: request.id, method: request.method, url: hiddenAddress(request.originalUrl ?? request.url) }),
  res: (response: { statusCode: number }) => ({ statusCode: response.statusCode }),
  err: plainError,
}

/**
 * One line a request: number, method, address without secrets, status and time. Never a body, a cookie, a header, an
 * asker's words or network address. Where the log takes no such lines, none is made ready: that took about a fifth of the
 * time of reading a case. What goes wrong is then still written with its request.
 */
export function logRequests(log: Logger, app: Pick<Express, 'request'>): RequestHandler {
  if (log.isLevelEnabled('info')) {
    return pinoHttp({
      logger: log,
      genReqId: () => randomUUID(),
      customLogLevel: (_request, response) => (response.statusCode >= 500 ? 'error' : 'info'),
      wrapSerializers: false,
      serializers,
      // Should a header ever come in by another way, it is still not written out.
      redact: ['req.headers', 'res.headers'],
    })
  }
  const own = log.child({}, { serializers })
  // On what all requests inherit from: a property defined on each would cost more than the rest of this.
  Object.defineProperty(app.request, 'log', { configurable: true, get(this: Request): Request['log'] { return own.child({ req: this }) } })
  return (request, _response, next) => {
    request.id = randomUUID()
    next()
  }
}

// Only these fields: libraries hang request bodies and SQL parameters on their errors.
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { message: 'something that is not an error was thrown' }
  const { name, message, stack, cause } = error
  return { type: name, message, stack, ...(cause instanceof Error ? { cause: plainError(cause) } : {}) }
}
