import type { RequestHandler } from 'express'

/** What the panel asks for from pages elsewhere; everything else is for our own pages alone. */
const FOR_PANELS = /^\/api\/(?:cases|region|guide|suggest)(?:\/|$)/

/** How long a browser may remember the permission, in seconds. */
const REMEMBER_SECONDS = 3600

/**
 * Lets the panel on the listed web pages ask its questions (CORS, as in the Fetch standard). Never with cookies: a panel
 * elsewhere is always the public.
 */
export function allowOrigins(origins: readonly string[]): RequestHandler {
  const allowed = new Set(origins)
  return (request, response, next) => {
    if (!FOR_PANELS.test(request.path)) {
      next()
      return
    }
    // The first to say what an answer depends on, so there is nothing to add to.
    response.setHeader('vary', 'Origin')
    const { origin } = request.headers
    if (origin === undefined || !allowed.has(origin)) {
      next()
      return
    }
    response.set('access-control-allow-origin', origin)
    response.set('access-control-expose-headers', 'retry-after')
    if (request.method !== 'OPTIONS' || request.get('access-control-request-method') === undefined) {
      next()
      return
    }
    response.set({
      'access-control-allow-methods': 'GET, POST, PUT', 'access-control-allow-headers': 'content-type',
      'access-control-max-age': String(REMEMBER_SECONDS),
    })
    response.status(204).end()
  }
}
