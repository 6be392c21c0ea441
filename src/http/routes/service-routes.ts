import { z } from 'zod'
import { defineRoute, type Route } from '../route.js'

/** About the service itself. */
export const serviceRoutes: readonly Route[] = [
  defineRoute('GET', '/healthz', {
    summary: 'Whether the service is up.',
    reply: z.object({ ok: z.literal(true) }),
    handle: () => ({ ok: true }),
  }),
  defineRoute('GET', '/api/openapi.json', {
    summary: 'This document.',
    reply: z.record(z.string(), z.unknown()),
    handle: ({ describeService }) => describeService(),
  }),
]
