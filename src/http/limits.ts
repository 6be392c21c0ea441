import type { Request, RequestHandler } from 'express'
import { rateLimit, type Store as CounterStore } from 'express-rate-limit'
import type { CounterOf } from './shared-counter.js'
import { RequestFault } from './request-fault.js'
import type { Settings } from './settings.js'

/** What a route may be asked too often for. */
export type LimitName = 'open case' | 'sign in' | 'suggest' | 'send photo' | 'change case'

/** Suggestions come while someone types, some three a second at most, and a helpline's volunteers share one address. */
const SUGGESTIONS_PER_MINUTE = 1200
/** Six photos a case, each perhaps sent a few times on a weak signal, by several people who share one address. */
const PHOTOS_PER_MINUTE = 120
/** Changes of one case, taken or refused: nobody answers five checks a second, and a program gone wild may. */
const CHANGES_PER_MINUTE = 300

/**
 * One limiter a name, counted in one-minute windows. By the asker's address, in one place for all processes where there is
 * `counterOf`; suggestions write nothing and are counted in each process, whose own time is all that they take. Changes
 * of a case are counted by the case, in each process: a case takes only so many in its whole life (`CASE_FULL`), so this
 * guards the time that they take, and counting them in the store would take more of it.
 */
export function limiters(settings: Pick<Settings, 'casesPerMinute' | 'signInsPerMinute'>, counterOf?: CounterOf): Record<LimitName, RequestHandler> {
  return {
    'open case': limiter(settings.casesPerMinute, counterOf?.('open case')),
    'sign in': limiter(settings.signInsPerMinute, counterOf?.('sign in')),
    suggest: limiter(SUGGESTIONS_PER_MINUTE),
    'send photo': limiter(PHOTOS_PER_MINUTE, counterOf?.('send photo')),
    'change case': limiter(CHANGES_PER_MINUTE, undefined, caseOf),
  }
}

function caseOf(request: Request): string {
  return String(request.params['link'])
}

function limiter(limit: number, store?: CounterStore, keyGenerator?: (request: Request) => string): RequestHandler {
  return rateLimit({
    windowMs: 60_000, limit, standardHeaders: 'draft-7', legacyHeaders: false,
    // Helping while the store is slow matters more than counting.
    ...(keyGenerator === undefined ? {} : { keyGenerator }),
    ...(store === undefined ? {} : { store, passOnStoreError: true }),
    handler: (_request, _response, next) => {
      next(new RequestFault('TOO_MANY', { headers: { 'retry-after': '60' } }))
    },
  })
}
