import type { RequestHandler } from 'express'

/** Shows people in a browser a page that says where to go on; what asks for data goes on to the problem document. */
export function pageForBrowsers(webDir: string): RequestHandler {
  return (request, response, next) => {
    const isForPeople = request.method === 'GET' && !/^\/(?:api|assets)(?:\/|$)/.test(request.path)
      && request.accepts(['application/problem+json', 'json', 'html']) === 'html'
    if (!isForPeople) {
      next()
      return
    }
    response.status(404).sendFile('missing.html', { root: webDir, cacheControl: false, headers: { 'cache-control': 'no-store' } })
  }
}
