import { randomUUID } from 'node:crypto'
import type { Express, Request } from 'express'
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
 * Numbers the requests of an app, and writes one line for each: number, method, address without secrets, status and time.
 * Never a body, a cookie, a header, an asker's words or network address. Where the log takes no such lines, none is made
 * ready, nor a number that nobody asks for: that took about a fifth of the time of reading a case. What goes wrong is then
 * still written with its request.
 */
export function logRequests(app: Pick<Express, 'request' | 'use'>, log: Logger): void {
  if (log.isLevelEnabled('info')) {
    app.use(pinoHttp({
      logger: log,
      genReqId: () => randomUUID(),
      customLogLevel: (_request, response) => (response.statusCode >= 500 ? 'error' : 'info'),
      wrapSerializers: false,
      serializers,
      // Should a header ever come in by another way, it is still not written out.
      redact: ['req.headers', 'res.headers'],
    }))
    return
  }
  const own = log.child({}, { serializers })
  const numbers = new WeakMap<Request, string>()
  // On what all requests inherit from: a property defined on each would cost more than all the rest.
  Object.defineProperties(app.request, {
    id: { get(this: Request): string { return numberOf(numbers, this) } },
    log: { get(this: Request): Request['log'] { return own.child({ req: this }) } },
  })
}

function numberOf(numbers: WeakMap<Request, string>, request: Request): string {
  const known = numbers.get(request) ?? randomUUID()
  numbers.set(request, known)
  return known
}

// Only these fields: libraries hang request bodies and SQL parameters on their errors.
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { message: 'something that is not an error was thrown' }
  const { name, message, stack, cause } = error
  return { type: name, message, stack, ...(cause instanceof Error ? { cause: plainError(cause) } : {}) }
}
