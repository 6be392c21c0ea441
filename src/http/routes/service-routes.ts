import { z } from 'zod'
import { RequestFault } from '../request-fault.js'
import { defineRoute, type Route } from '../route.js'
import { STORE_PATIENCE_MS } from '../store-patience.js'
import { within } from '../within.js'

/** About the service itself. */
export const serviceRoutes: readonly Route[] = [
  defineRoute('GET', '/healthz', {
    summary: 'Whether the process is up, whatever it leans on.',
    reply: z.object({ ok: z.literal(true) }),
    handle: () => ({ ok: true }),
  }),
  defineRoute('GET', '/readyz', {
    summary: 'Whether requests can be answered: the guide is sound, and the store answers.',
    reply: z.object({ ready: z.literal(true) }),
    async handle({ desk }) {
      await within(desk.reachStore(), STORE_PATIENCE_MS).catch(() => {
        throw new RequestFault('NOT_READY', { headers: { 'retry-after': '5' } })
      })
      return { ready: true }
    },
  }),
  defineRoute('GET', '/api/openapi.json', {
    summary: 'This document.',
    reply: z.record(z.string(), z.unknown()),
    handle: ({ describeService }) => describeService(),
  }),
]
