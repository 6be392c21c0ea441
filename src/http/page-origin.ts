import type { Request } from 'express'

/**
 * Where a request was sent from, by what the browser says of it: one of our own pages, a page elsewhere, or unsaid.
 * `Sec-Fetch-Site` (W3C Fetch Metadata) cannot be set by a page's script; older browsers still send `Origin`.
 */
export function pageOrigin(request: Request): 'own' | 'other' | 'unsaid' {
  const site = request.get('sec-fetch-site')
  if (site !== undefined) return site === 'same-origin' || site === 'none' ? 'own' : 'other'
  const origin = request.get('origin')
  if (origin === undefined) return 'unsaid'
  return origin === `${request.protocol}://${request.get('host') ?? ''}` ? 'own' : 'other'
}
