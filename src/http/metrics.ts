import { timingSafeEqual } from 'node:crypto'
import type { Request, RequestHandler } from 'express'
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import type { Desk } from '../desk/index.js'
import { RequestFault } from './request-fault.js'
import { STORE_PATIENCE_MS } from './store-patience.js'
import { within } from './within.js'

/** What the service measures of itself. */
export interface Metrics {
  /** Times every request, by method, place in the route table and status: never an address, which holds links. */
  readonly time: RequestHandler
  /** Answers in the text format of Prometheus. */
  readonly show: RequestHandler
}

/** What is measured besides requests and the process itself. */
export interface Measured {
  readonly desk: Pick<Desk, 'countTickets'>
  readonly countStreams: () => number
  /** Who may see them; null for programs on this machine only. */
  readonly token: string | null
}

/** From a millisecond, for reading a case, to a few seconds, for photos. */
const SECONDS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5]

/** Measures one running service. */
export function measureService({ desk, countStreams, token }: Measured): Metrics {
  const register = new Registry()
  collectDefaultMetrics({ register })
  const requests = new Histogram({
    name: 'frondline_request_seconds', help: 'How long requests took.', labelNames: ['method', 'route', 'status'],
    buckets: SECONDS, registers: [register],
  })
  new Gauge({
    name: 'frondline_live_streams', help: 'Browsers that follow changes of tickets.', registers: [register],
    collect() { this.set(countStreams()) },
  })
  const storeUp = new Gauge({ name: 'frondline_store_up', help: '1 while the store answers, 0 while it does not.', registers: [register] })
  const tickets = new Gauge({ name: 'frondline_tickets', help: 'Tickets by state.', labelNames: ['state'], registers: [register] })
  // While the store is down, what the process says of itself is needed most.
  const askStore = async (request: Request): Promise<void> => {
    tickets.reset()
    try {
      for (const { state, count } of await within(desk.countTickets(), STORE_PATIENCE_MS)) tickets.set({ state }, count)
      storeUp.set(1)
    } catch (fault) {
      request.log.warn({ err: fault }, 'the store did not answer when it was measured')
      storeUp.set(0)
    }
  }
  return {
    time: (request, response, next) => {
      const start = performance.now()
      response.on('close', () => {
        requests.observe({ method: request.method, route: placeOf(request), status: String(response.statusCode) }, (performance.now() - start) / 1000)
      })
      next()
    },
    show: async (request, response) => {
      if (!maySee(request, token)) throw new RequestFault('NO_SUCH_PLACE')
      await askStore(request)
      response.set({ 'content-type': register.contentType, 'cache-control': 'no-store' }).send(await register.metrics())
    },
  }
}

function placeOf(request: Request): string {
  const route = request.route as { readonly path?: unknown } | undefined
  return typeof route?.path === 'string' ? route.path : 'other'
}

/** With a token, whoever has it; without, a program on this machine that no proxy speaks for. */
function maySee(request: Request, token: string | null): boolean {
  if (token !== null) return isSame(request.get('authorization') ?? '', `Bearer ${token}`)
  const isForwarded = request.get('x-forwarded-for') !== undefined || request.get('forwarded') !== undefined
  return !isForwarded && /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/.test(request.socket.remoteAddress ?? '')
}

function isSame(given: string, wanted: string): boolean {
  const [one, other] = [Buffer.from(given), Buffer.from(wanted)]
  return one.length === other.length && timingSafeEqual(one, other)
}
