import { z } from 'zod'
import { CaseLink, TicketId } from '../../shared/index.js'
import type { Desk, Member, Who } from '../desk/index.js'
import type { ErrorCode } from './errors.js'
import { fitting } from './fitting.js'
import type { LimitName } from './limits.js'
import { RequestFault } from './request-fault.js'
import type { SessionCookie } from './session-cookie.js'

/** A request whose door was passed: role, origin and address are checked. */
export interface Passed {
  readonly desk: Desk
  readonly who: Who
  /** The named parts of the address; each fits its shape. */
  readonly part: (name: PartName) => string
  /** The sender's network address. */
  readonly address: string
  readonly cookie: SessionCookie
  readonly describeService: () => object
}

/** A request as a route's function gets it. */
export interface Asked<Body, Query> extends Passed {
  readonly body: Body
  readonly query: Query
}

/** One line of the route table: the router and the OpenAPI document are both made from it. */
export interface Route {
  readonly method: 'GET' | 'POST'
  /** As Express writes it: /api/cases/:link */
  readonly path: string
  readonly summary: string
  readonly body: z.ZodType | null
  readonly query: z.ZodObject | null
  /** Null for an answer without a body. */
  readonly reply: z.ZodType | null
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
  const bodySchema = spec.body ?? z.undefined()
  const querySchema = spec.query ?? z.object({})
  return {
    method, path, summary: spec.summary, body: spec.body ?? null, query: spec.query ?? null, reply: spec.reply,
    status: spec.status ?? 200, limit: spec.limit ?? null,
    answer(passed, sentBody, sentQuery) {
      const query = fitting(querySchema, sentQuery, 'QUERY_DOES_NOT_FIT') as z.output<Query>
      const body = fitting(bodySchema, sentBody, 'BODY_DOES_NOT_FIT') as z.output<Body>
      return spec.handle({ ...passed, body, query })
    },
  }
}

/** The signed-in person. The route's roles let nobody else through; this says so to the compiler, and stays a guard. */
export function signedIn({ who }: Passed): Member {
  if (who === null) throw new RequestFault('NOT_SIGNED_IN')
  return who
}

/** The shape of each named part of an address, and what is said when a part does not fit: it is simply not found. */
export const parts = {
  link: { shape: CaseLink, otherwise: 'CASE_NOT_FOUND' },
  ticket: { shape: TicketId, otherwise: 'TICKET_NOT_FOUND' },
  host: { shape: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/), otherwise: 'HOST_NOT_FOUND' },
} as const satisfies Record<string, { shape: z.ZodType<string>; otherwise: ErrorCode }>

export type PartName = keyof typeof parts

/** The names of the parts in a route's path, in order. */
export function partNames(path: string): PartName[] {
  return [...path.matchAll(/:([a-z]+)/g)].map(([, name]) => {
    if (name === 'link' || name === 'ticket' || name === 'host') return name
    throw new Error(`The path ${path} has a part ":${name ?? ''}" that has no shape.`)
  })
}
