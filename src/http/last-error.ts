import type { ErrorRequestHandler, Request } from 'express'
import { refusalFor } from './problem-documents.js'
import { requestLanguage } from './request-language.js'

/** The last middleware: turns whatever was thrown into a problem document. Our own faults are logged whole. */
export function answerErrors(): ErrorRequestHandler {
  return (thrown: unknown, request, response, next) => {
    const { document, headers } = refusalFor(thrown, requestId(request), requestLanguage(request))
    // A client's fault is in the request line of the log; its error may quote what was sent, so it is not logged.
    if (document.status >= 500) request.log.error({ err: thrown }, 'a request failed')
    if (response.headersSent) {
      next(thrown)
      return
    }
    response.status(document.status).set(headers).type('application/problem+json').send(JSON.stringify(document))
  }
}

/** The request's number in the log. */
export function requestId(request: Request): string {
  return String(request.id)
}
