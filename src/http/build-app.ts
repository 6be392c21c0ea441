import express, { type Express, type RequestHandler } from 'express'
import type { Logger } from 'pino'
import { type GuideState, MAX_PHOTO_BYTES } from '../../shared/index.js'
import type { Desk } from '../desk/index.js'
import { askPages } from './ask/ask-pages.js'
import { allowOrigins } from './allow-origins.js'
import { fileReader, MOST_BYTES_UNDER_WAY, SILENCE_MS } from './file-body.js'
import { answerErrors } from './last-error.js'
import { limiters } from './limits.js'
import { liveStreams, type LiveStreams } from './live-streams.js'
import type { Metrics } from './metrics.js'
import { describeRoutes } from './openapi.js'
import { pageForBrowsers } from './missing-page.js'
import { servePages } from './pages.js'
import { RequestFault } from './request-fault.js'
import { logRequests } from './request-log.js'
import { routes } from './routes/index.js'
import { safeHeaders } from './safe-headers.js'
import { serveRoute } from './serve-route.js'
import { seeingPages } from './seeing/seeing-pages.js'
import { sessionCookieName } from './session-cookie.js'
import type { CounterOf } from './shared-counter.js'
import type { Settings } from './settings.js'

/** What the app is made of. */
export interface AppParts {
  readonly desk: Desk
  readonly log: Logger
  readonly settings: Pick<Settings, 'panelOrigins' | 'behindHttps' | 'casesPerMinute' | 'signInsPerMinute'>
  /** Folder of the built screens. */
  readonly webDir: string
  readonly streams?: LiveStreams
  /** Which guide is in use, and what became of the last change to it. */
  readonly guideState: () => GuideState
  readonly metrics?: Metrics
  /** Where requests are counted; in this process when left out. */
  readonly counterOf?: CounterOf | undefined
}

/** What a form may need round a photo. */
const FORM_ROOM_BYTES = 4096

/** Builds the app without opening a port. */
export function buildApp({
  desk, log, settings, webDir, guideState, streams = liveStreams(), metrics, counterOf,
}: AppParts): Express {
  const app = express()
  app.disable('x-powered-by')
  app.set('query parser', 'simple')
  // The proxy is on this machine or its private network; what it says of the asker's address is believed.
  if (settings.behindHttps) app.set('trust proxy', ['loopback', 'linklocal', 'uniquelocal'])

  if (metrics !== undefined) app.use(metrics.time)
  logRequests(app, log)
  app.use(safeHeaders(settings.behindHttps))
  app.use(allowOrigins(settings.panelOrigins))

  const limits = limiters(settings, counterOf)
  const files = fileReader({ mostBytes: MAX_PHOTO_BYTES, silenceMs: SILENCE_MS, mostUnderWay: MOST_BYTES_UNDER_WAY })
  const describeService = onlyOnce(() => describeRoutes(routes, sessionCookieName(settings.behindHttps)))
  for (const route of routes) {
    const serve = serveRoute(route, { desk, behindHttps: settings.behindHttps, describeService, files, streams, guideState })
    const handlers = route.limit === null ? [serve] : [limits[route.limit], serve]
    if (route.method === 'GET') app.get(route.path, ...handlers)
    else if (route.method === 'PUT') app.put(route.path, ...handlers)
    else app.post(route.path, ...handlers)
  }
  for (const [path, methods] of methodsByPath()) app.all(path, refuseMethod(methods))

  if (metrics !== undefined) app.get('/metrics', metrics.show)

  // A photo in a form has the form's own lines round it.
  const photoForms = fileReader({ mostBytes: MAX_PHOTO_BYTES + FORM_ROOM_BYTES, silenceMs: SILENCE_MS, mostUnderWay: MOST_BYTES_UNDER_WAY })
  app.use(askPages({ desk, webDir, limits, files: photoForms }))
  app.use(seeingPages({ desk, webDir, panelOrigins: settings.panelOrigins, behindHttps: settings.behindHttps }))
  app.use(servePages(webDir))
  app.use(pageForBrowsers(webDir))
  app.use(() => {
    throw new RequestFault('NO_SUCH_PLACE')
  })
  app.use(answerErrors())
  return app
}

function methodsByPath(): Map<string, string> {
  const byPath = new Map<string, string>()
  for (const { path, method } of routes) {
    const known = byPath.get(path)
    byPath.set(path, known === undefined ? method : `${known}, ${method}`)
  }
  return byPath
}

function refuseMethod(methods: string): RequestHandler {
  return () => {
    throw new RequestFault('WRONG_METHOD', { words: { methods }, headers: { allow: methods } })
  }
}

function onlyOnce<Value>(make: () => Value): () => Value {
  let made: { value: Value } | null = null
  return () => (made ??= { value: make() }).value
}
