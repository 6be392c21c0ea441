import { IncomingMessage, ServerResponse } from 'node:http'
import { Socket } from 'node:net'
import type { RequestHandler } from 'express'
import helmet from 'helmet'

/**
 * The headers that keep our pages to themselves: no script, style or frame from elsewhere, nothing inline.
 * @param framedBy origins of pages that may show this one inside them; none when left out
 */
export function safeHeaders(behindHttps: boolean, framedBy: readonly string[] | null = null): RequestHandler {
  return sameEachTime(helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'none'"],
        'script-src': ["'self'"],
        'style-src': ["'self'"],
        'img-src': ["'self'", 'data:'],
        'font-src': ["'self'"],
        'connect-src': ["'self'"],
        'manifest-src': ["'self'"],
        'form-action': ["'self'"],
        'base-uri': ["'none'"],
        'frame-ancestors': framedBy === null ? ["'none'"] : ["'self'", ...framedBy],
        ...(behindHttps ? { 'upgrade-insecure-requests': [] } : {}),
      },
    },
    // A case's link is in the address of its page, and opens it: it must not travel on to wherever a source links.
    referrerPolicy: { policy: 'no-referrer' },
    strictTransportSecurity: behindHttps ? { maxAge: 31_536_000 } : false,
    // The older header knows no list of origins; where there is one it says nothing.
    xFrameOptions: framedBy === null ? { action: 'deny' } : false,
  }))
}

/** A handler that sets the headers which `set` gives one response. They depend on nothing asked, so they are worked out once. */
function sameEachTime(set: (request: IncomingMessage, response: ServerResponse, next: (fault?: unknown) => void) => void): RequestHandler {
  const request = new IncomingMessage(new Socket())
  const sample = new ServerResponse(request)
  set(request, sample, (fault) => {
    if (fault !== undefined) throw fault instanceof Error ? fault : new Error(String(fault))
  })
  const headers = Object.entries(sample.getHeaders())
  return (_request, response, next) => {
    for (const [name, value] of headers) if (value !== undefined) response.setHeader(name, value)
    next()
  }
}
