import { z } from 'zod'
import { RequestFault } from '../request-fault.js'
import { defineRoute, type Route } from '../route.js'

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
      await answersInTime(desk.reachStore())
      return { ready: true }
    },
  }),
  defineRoute('GET', '/api/openapi.json', {
    summary: 'This document.',
    reply: z.record(z.string(), z.unknown()),
    handle: ({ describeService }) => describeService(),
  }),
]

/** A store that takes longer than this is one that requests would pile up on. */
const PATIENCE_MS = 2000

async function answersInTime(asked: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<void>((_resolve, reject) => {
    timer = setTimeout(() => { reject(new Error('late')) }, PATIENCE_MS)
  })
  try {
    await Promise.race([asked, late])
  } catch {
    throw new RequestFault('NOT_READY', { headers: { 'retry-after': '5' } })
  } finally {
    clearTimeout(timer)
  }
}
