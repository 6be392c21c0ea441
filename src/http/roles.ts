import type { Role } from '../../shared/index.js'
import type { Who } from '../desk/index.js'
import { RequestFault } from './request-fault.js'

/** Who may use a route: anyone, anyone signed in, or only these roles. */
export type Access = 'anyone' | 'signed in' | readonly Role[]

const HELPLINE: readonly Role[] = ['volunteer', 'specialist']
const SPECIALISTS: readonly Role[] = ['specialist']
const ADMINISTRATORS: readonly Role[] = ['administrator']

/** The one place that says who may do what. A route that is not listed here is refused to everybody. */
export const roles: Readonly<Record<string, Access>> = {
  'GET /healthz': 'anyone',
  'GET /readyz': 'anyone',
  'GET /api/openapi.json': 'anyone',
  'GET /api/region': 'anyone',
  'GET /api/guide/hosts': 'anyone',
  'GET /api/guide/hosts/:host/complaints': 'anyone',
  'GET /api/guide/hosts/:host/problems': SPECIALISTS,
  'GET /api/guide/hosts/:host/checks': SPECIALISTS,
  'POST /api/suggest': 'anyone',
  'GET /api/guide/state': HELPLINE,

  // Whoever has a case's link may work on the case; the link is the key.
  'POST /api/cases': 'anyone',
  'GET /api/cases/:link': 'anyone',
  'POST /api/cases/:link/place': 'anyone',
  'POST /api/cases/:link/words': 'anyone',
  'POST /api/cases/:link/answers': 'anyone',
  'POST /api/cases/:link/take-back': 'anyone',
  'POST /api/cases/:link/carry-on': 'anyone',
  'POST /api/cases/:link/hand-over': 'anyone',
  'POST /api/cases/:link/language': 'anyone',
  'POST /api/cases/:link/notes': HELPLINE,
  'GET /api/cases/:link/similar': HELPLINE,
  'PUT /api/cases/:link/photos/:upload': 'anyone',
  'GET /api/cases/:link/photos/:photo/large': 'anyone',
  'GET /api/cases/:link/photos/:photo/small': 'anyone',
  'POST /api/cases/:link/photos/:photo/remove': 'anyone',

  'GET /api/calls': HELPLINE,
  'POST /api/calls/:link/close': HELPLINE,
  'POST /api/practice/next': HELPLINE,
  'GET /api/practice/:practice': HELPLINE,

  'GET /api/tickets': SPECIALISTS,
  'GET /api/tickets/events': SPECIALISTS,
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

  'GET /api/season': HELPLINE,
  'GET /api/season/weeks': HELPLINE,
  'GET /api/season/plausible': HELPLINE,
  'GET /api/season/weather': HELPLINE,
  'GET /api/season/presence': HELPLINE,
  'POST /api/season/presence': SPECIALISTS,
  'GET /api/season/note': HELPLINE,
  'POST /api/season/note/approve': SPECIALISTS,
  'POST /api/season/note/take-back': SPECIALISTS,
  'GET /api/seeing': 'anyone',
  'GET /api/season/notices': HELPLINE,
  'POST /api/season/notices/:notice/seen': SPECIALISTS,

  'GET /api/mail': SPECIALISTS,
  'POST /api/mail/:mail/retry': SPECIALISTS,

  'POST /api/sign-in': 'anyone',
  'POST /api/sign-out': 'anyone',
  // The token of an invitation is its key.
  'POST /api/invitation': 'anyone',
  'POST /api/join': 'anyone',
  'GET /api/session': 'anyone',
  'GET /api/me': 'signed in',
  'POST /api/me/password': 'signed in',
  'POST /api/me/sign-out-everywhere': 'signed in',
  'POST /api/me/codes/start': 'signed in',
  'POST /api/me/codes/confirm': 'signed in',
  'POST /api/me/codes/stop': 'signed in',

  'GET /api/people': ADMINISTRATORS,
  'POST /api/people/invite': ADMINISTRATORS,
  'POST /api/people/withdraw-invitation': ADMINISTRATORS,
  'POST /api/people/role': ADMINISTRATORS,
  'POST /api/people/remove': ADMINISTRATORS,
  'POST /api/people/sign-out': ADMINISTRATORS,
  'POST /api/people/forget-codes': ADMINISTRATORS,
  'GET /api/settings': ADMINISTRATORS,
  'POST /api/settings': ADMINISTRATORS,
}

/** All that somebody may do who has to set up one-time codes first. */
const BEFORE_CODES: ReadonlySet<string> = new Set([
  'GET /api/session', 'GET /api/me', 'POST /api/me/codes/start', 'POST /api/me/codes/confirm', 'POST /api/me/sign-out-everywhere',
])

/** Lets a request through, or throws why not. An administrator may do what a specialist may. */
export function checkRole(route: { readonly method: string; readonly path: string }, who: Who): void {
  const access = accessTo(route)
  if (access === 'anyone') return
  if (access === null) throw new RequestFault('NOT_YOUR_ROLE')
  if (who === null) throw new RequestFault('NOT_SIGNED_IN')
  if (who.mustSetUpCodes === true && !BEFORE_CODES.has(nameOf(route))) throw new RequestFault('CODES_TO_SET_UP')
  if (access === 'signed in' || access.includes(who.role)) return
  if (who.role === 'administrator' && access.includes('specialist')) return
  throw new RequestFault('NOT_YOUR_ROLE')
}

/** The person as far as a route may know them: whoever has to set up one-time codes first is the public everywhere else. */
export function knownAs(route: { readonly method: string; readonly path: string }, who: Who): Who {
  return who?.mustSetUpCodes === true && accessTo(route) === 'anyone' && !BEFORE_CODES.has(nameOf(route)) ? null : who
}

/** Who may use a route, or null when the table does not say: then nobody may. */
export function accessTo(route: { readonly method: string; readonly path: string }): Access | null {
  return roles[nameOf(route)] ?? null
}

function nameOf({ method, path }: { readonly method: string; readonly path: string }): string {
  return `${method} ${path}`
}
