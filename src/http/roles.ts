import type { Role } from '../../shared/index.js'
import type { Who } from '../desk/index.js'
import { RequestFault } from './request-fault.js'

/** Who may use a route: anyone, anyone signed in, or only these roles. */
export type Access = 'anyone' | 'signed in' | readonly Role[]

const HELPLINE: readonly Role[] = ['volunteer', 'specialist']
const SPECIALISTS: readonly Role[] = ['specialist']

/** The one place that says who may do what. A route that is not listed here is refused to everybody. */
export const roles: Readonly<Record<string, Access>> = {
  'GET /healthz': 'anyone',
  'GET /api/openapi.json': 'anyone',
  'GET /api/region': 'anyone',
  'GET /api/guide/hosts': 'anyone',
  'GET /api/guide/hosts/:host/complaints': 'anyone',
  'GET /api/guide/hosts/:host/problems': SPECIALISTS,
  'POST /api/suggest': 'anyone',

  // Whoever has a case's link may work on the case; the link is the key.
  'POST /api/cases': 'anyone',
  'GET /api/cases/:link': 'anyone',
  'POST /api/cases/:link/place': 'anyone',
  'POST /api/cases/:link/words': 'anyone',
  'POST /api/cases/:link/answers': 'anyone',
  'POST /api/cases/:link/carry-on': 'anyone',
  'POST /api/cases/:link/hand-over': 'anyone',
  'POST /api/cases/:link/notes': HELPLINE,
  'PUT /api/cases/:link/photos/:upload': 'anyone',
  'GET /api/cases/:link/photos/:photo/large': 'anyone',
  'GET /api/cases/:link/photos/:photo/small': 'anyone',
  'POST /api/cases/:link/photos/:photo/remove': 'anyone',

  'GET /api/calls': HELPLINE,
  'POST /api/calls/:link/close': HELPLINE,

  'GET /api/tickets': SPECIALISTS,
  'GET /api/tickets/:ticket': SPECIALISTS,
  'POST /api/tickets/:ticket/take': SPECIALISTS,
  'GET /api/tickets/:ticket/contact': SPECIALISTS,
  'POST /api/tickets/:ticket/give-back': SPECIALISTS,
  'POST /api/tickets/:ticket/hand-on': SPECIALISTS,
  'POST /api/tickets/:ticket/ask-back': SPECIALISTS,
  'POST /api/tickets/:ticket/samples': SPECIALISTS,
  'POST /api/tickets/:ticket/results': SPECIALISTS,
  'POST /api/tickets/:ticket/review': SPECIALISTS,
  'POST /api/tickets/:ticket/settle': SPECIALISTS,
  'POST /api/tickets/:ticket/amend': SPECIALISTS,
  'POST /api/tickets/:ticket/reopen': SPECIALISTS,
  'POST /api/tickets/:ticket/notes': SPECIALISTS,
  'POST /api/tickets/:ticket/merge': SPECIALISTS,
  'POST /api/tickets/:ticket/unmerge': SPECIALISTS,
  'POST /api/tickets/:ticket/link': SPECIALISTS,
  'POST /api/tickets/:ticket/unlink': SPECIALISTS,
  'GET /api/colleagues': SPECIALISTS,
  'GET /api/casebook': SPECIALISTS,
  'GET /api/tree-suggestions': SPECIALISTS,

  'POST /api/sign-in': 'anyone',
  'POST /api/sign-out': 'anyone',
  'GET /api/me': 'signed in',
}

/** Lets a request through, or throws why not. An administrator may do what a specialist may. */
export function checkRole(route: { readonly method: string; readonly path: string }, who: Who): void {
  const access = accessTo(route)
  if (access === 'anyone') return
  if (access === null) throw new RequestFault('NOT_YOUR_ROLE')
  if (who === null) throw new RequestFault('NOT_SIGNED_IN')
  if (access === 'signed in' || access.includes(who.role)) return
  if (who.role === 'administrator' && access.includes('specialist')) return
  throw new RequestFault('NOT_YOUR_ROLE')
}

/** Who may use a route, or null when the table does not say: then nobody may. */
export function accessTo({ method, path }: { readonly method: string; readonly path: string }): Access | null {
  return roles[`${method} ${path}`] ?? null
}
