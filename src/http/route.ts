import { z } from 'zod'
import { CaseLink, type GuideState, type Language, MailId, NoticeId, PhotoNumber, TicketId, UploadKey } from '../../shared/index.js'
import type { Desk, Member, Who } from '../desk/index.js'
import type { ErrorCode } from './errors.js'
import { fitting } from './fitting.js'
import type { LimitName } from './limits.js'
import { RequestFault } from './request-fault.js'
import type { LiveStream } from './live-streams.js'
import type { Picture } from './picture.js'
import type { SessionCookie } from './session-cookie.js'

/** A request whose door was passed: role, origin and address are checked. */
export interface Passed {
  readonly desk: Desk
  readonly who: Who
  /** The named parts of the address; each fits its shape. */
  readonly part: (name: PartName) => string
  /** The language that the sender wants to be spoken to in. Worked out when it is asked for, as most routes do not. */
  readonly language: () => Language
  /** The sender's network address. Worked out when it is asked for. */
  readonly address: () => string
  readonly cookie: SessionCookie
  readonly describeService: () => object
  /** Reads the body as a file, for the routes that take one. */
  readonly file: () => Promise<Uint8Array>
  readonly guideState: () => GuideState
}

/** A request as a route's function gets it. */
export interface Asked<Body, Query> extends Passed {
  readonly body: Body
  readonly query: Query
}

/** One line of the route table: the router and the OpenAPI document are both made from it. */
export interface Route {
  readonly method: 'GET' | 'POST' | 'PUT'
  /** As Express writes it: /api/cases/:link */
  readonly path: string
  readonly summary: string
  /** JSON of this shape, a file of any kind, or nothing. */
  readonly body: z.ZodType | 'file' | null
  readonly query: z.ZodObject | null
  /** JSON of this shape, a JPEG, a stream of events of this shape, or null for an answer without a body. */
  readonly reply: z.ZodType | 'picture' | { readonly events: z.ZodType } | null
  readonly status: number
  readonly limit: LimitName | null
  answer(passed: Passed, body: unknown, query: unknown): unknown
}

interface RouteSpec<Body extends z.ZodType, Query extends z.ZodObject> {
  readonly summary: string
  readonly body?: Body
  readonly query?: Query
  readonly reply: z.ZodType | null
  readonly status?: number
  readonly limit?: LimitName
  handle(asked: Asked<z.output<Body>, z.output<Query>>): unknown
}

/** Makes one line of the route table. Body and query are parsed before `handle` is called. */
export function defineRoute<Body extends z.ZodType = z.ZodUndefined, Query extends z.ZodObject = z.ZodObject>(
  method: 'GET' | 'POST', path: string, spec: RouteSpec<Body, Query>,
): Route {
  return {
    method, path, summary: spec.summary, body: spec.body ?? null, query: spec.query ?? null, reply: spec.reply,
    status: spec.status ?? 200, limit: spec.limit ?? null,
    answer(passed, sentBody, sentQuery) {
      const query = (spec.query === undefined ? {} : fitting(spec.query, sentQuery, 'QUERY_DOES_NOT_FIT')) as z.output<Query>
      const body = (spec.body === undefined ? undefined : fitting(spec.body, sentBody, 'BODY_DOES_NOT_FIT')) as z.output<Body>
      return spec.handle({ ...passed, body, query })
    },
  }
}

/** A request of somebody who is signed in. */
export interface MemberAsked<Body, Query> extends Asked<Body, Query> {
  readonly member: Member
}

/** A route for people who are signed in; its roles let nobody else through. */
export function defineMemberRoute<Body extends z.ZodType = z.ZodUndefined, Query extends z.ZodObject = z.ZodObject>(
  method: 'GET' | 'POST', path: string, spec: Omit<RouteSpec<Body, Query>, 'handle'> & {
    handle(asked: MemberAsked<z.output<Body>, z.output<Query>>): unknown
  },
): Route {
  return defineRoute<Body, Query>(method, path, { ...spec, handle: (asked) => spec.handle({ ...asked, member: signedIn(asked) }) })
}

type NoBody = z.ZodUndefined

/** A route that takes a file as its body. The file is read when `handle` asks for it. */
export function defineFileRoute(
  method: 'PUT', path: string, spec: Omit<RouteSpec<NoBody, z.ZodObject>, 'body'>,
): Route {
  return { ...defineRoute('POST', path, spec), method, body: 'file' }
}

/** A route that answers a JPEG. */
export function definePictureRoute(path: string, spec: {
  readonly summary: string
  handle(asked: Asked<undefined, Record<string, unknown>>): Promise<Picture>
}): Route {
  return { ...defineRoute('GET', path, { ...spec, reply: null }), reply: 'picture' }
}

/** A route that answers with a stream of server-sent events, for people who are signed in. */
export function defineEventRoute(path: string, spec: {
  readonly summary: string
  readonly event: z.ZodType
  handle(asked: Asked<undefined, Record<string, unknown>>): Pick<LiveStream, 'first' | 'follow'>
}): Route {
  return { ...defineRoute('GET', path, { ...spec, reply: null }), reply: { events: spec.event } }
}

/** The signed-in person. The route's roles let nobody else through; this says so to the compiler, and stays a guard. */
function signedIn({ who }: Passed): Member {
  if (who === null) throw new RequestFault('NOT_SIGNED_IN')
  return who
}

/** The shape of each named part of an address, and what is said when a part does not fit: it is simply not found. */
export const parts = {
  link: { shape: CaseLink, otherwise: 'CASE_NOT_FOUND' },
  ticket: { shape: TicketId, otherwise: 'TICKET_NOT_FOUND' },
  mail: { shape: MailId, otherwise: 'MAIL_NOT_FOUND' },
  notice: { shape: NoticeId, otherwise: 'NOTICE_NOT_FOUND' },
  photo: { shape: PhotoNumber, otherwise: 'PHOTO_NOT_FOUND' },
  upload: { shape: UploadKey, otherwise: 'UPLOAD_KEY_DOES_NOT_FIT' },
  host: { shape: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/), otherwise: 'HOST_NOT_FOUND' },
  practice: { shape: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/), otherwise: 'PRACTICE_NOT_FOUND' },
} as const satisfies Record<string, { shape: z.ZodType<string>; otherwise: ErrorCode }>

export type PartName = keyof typeof parts

/** The names of the parts in a route's path, in order. */
export function partNames(path: string): PartName[] {
  return [...path.matchAll(/:([a-z]+)/g)].map(([, name]) => {
    if (isPartName(name)) return name
    throw new Error(`The path ${path} has a part ":${name ?? ''}" that has no shape.`)
  })
}

function isPartName(name: string | undefined): name is PartName {
  return name !== undefined && Object.hasOwn(parts, name)
}
