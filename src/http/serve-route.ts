import type { Request, RequestHandler, Response } from 'express'
import type { GuideState } from '../../shared/index.js'
import type { Desk, Who } from '../desk/index.js'
import { type FileReader } from './file-body.js'
import { jsonBody } from './json-body.js'
import { asEvents, isEventRoute, type LiveStreams } from './live-streams.js'
import { pageOrigin } from './page-origin.js'
import { asPicture, sendPicture } from './picture.js'
import { RequestFault } from './request-fault.js'
import { requestLanguage } from './request-language.js'
import { checkRole, knownAs } from './roles.js'
import { type PartName, partNames, parts, type Route } from './route.js'
import { sendJson } from './send-json.js'
import { type SessionCookie, sessionCookie } from './session-cookie.js'

/** What serving needs besides the route. */
export interface Serving {
  readonly desk: Desk
  readonly behindHttps: boolean
  readonly describeService: () => object
  readonly files: FileReader
  readonly streams: LiveStreams
  readonly guideState: () => GuideState
}

/**
 * Serves one route. In this order: who is it, may they, did one of our pages send it, is the address well formed, is
 * the body JSON that fits; only then the desk is asked.
 */
export function serveRoute(route: Route, { desk, behindHttps, describeService, files, streams, guideState }: Serving): RequestHandler {
  const names = partNames(route.path)
  return async (request, response) => {
    const cookie = sessionCookie(request, response, behindHttps)
    const member = cookie.token === null ? null : await desk.memberOfSession(cookie.token)
    checkRole(route, member)
    checkOrigin(route, request, member, cookie)
    const who = knownAs(route, member)
    const found = new Map(names.map((name) => [name, fittingPart(request, name)]))
    const body = route.body === null || route.body === 'file' ? undefined : await jsonBody(request, response)
    const passed = {
      desk, who, cookie, describeService, guideState, file: () => files.read(request),
      language: () => requestLanguage(request), address: () => request.ip ?? '',
      part: (name: PartName) => found.get(name) ?? missingPart(route, name),
    }
    const reply = await route.answer(passed, body, route.query === null ? {} : request.query)
    if (isEventRoute(route)) streams.serve(response, { ...asEvents(reply), isAllowed: () => stillMay(route, desk, cookie) })
    else send(response, route, reply)
  }
}

/**
 * A page elsewhere must not act with a signed-in person's cookie. SameSite keeps the cookie back already; this holds
 * where a browser or a sister host gets around that. Signing in from elsewhere is refused as well.
 */
function checkOrigin(route: Route, request: Request, who: Who, cookie: SessionCookie): void {
  if (route.method === 'GET') return
  const from = pageOrigin(request)
  const carriesSession = who !== null || cookie.token !== null
  // Whoever could sign us in from elsewhere would have us work under their name.
  const isSignIn = route.path === '/api/sign-in' || route.path === '/api/join'
  if ((carriesSession && !isSignIn && from !== 'own') || (isSignIn && from === 'other')) {
    throw new RequestFault('OTHER_ORIGIN')
  }
}

/** Whether a session that was let in some time ago would be let in now. */
async function stillMay(route: Route, desk: Desk, { token }: SessionCookie): Promise<boolean> {
  const who = token === null ? null : await desk.memberOfSession(token)
  try {
    checkRole(route, who)
    return true
  } catch {
    return false
  }
}

function fittingPart(request: Request, name: PartName): string {
  const { shape, otherwise } = parts[name]
  const read = shape.safeParse(request.params[name])
  if (!read.success) throw new RequestFault(otherwise)
  return read.data
}

function missingPart(route: Route, name: PartName): never {
  throw new Error(`The route ${route.path} has no part ":${name}".`)
}

function send(response: Response, route: Route, reply: unknown): void {
  if (route.reply === 'picture') {
    sendPicture(response, asPicture(reply))
    return
  }
  response.status(route.status).set('cache-control', 'no-store')
  if (route.reply === null) response.end()
  else sendJson(response, reply)
}
