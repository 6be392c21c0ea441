import { createHash } from 'node:crypto'
import type { Store as CounterStore } from 'express-rate-limit'
import { countRequest, forgetRequestCountsBefore, type Store } from '../store/index.js'

/** Counts requests of one kind, for express-rate-limit. */
export type CounterOf = (kind: string) => CounterStore

const WINDOW_MS = 60_000

/**
 * Counts in the store, so that an address that reaches several processes has one limit and not as many as there are. With
 * SQLite, which one process serves, counting stays in its memory: undefined.
 */
export function sharedCounter(store: Pick<Store, 'name' | 'db'>, clock: () => Date): CounterOf | undefined {
  if (store.name === 'SQLite') return undefined
  let forgottenAt = 0
  return (kind) => ({
    localKeys: false,
    async increment(address) {
      const now = clock().getTime()
      const resetTime = new Date((Math.floor(now / WINDOW_MS) + 1) * WINDOW_MS)
      if (now - forgottenAt > WINDOW_MS) {
        forgottenAt = now
        await forgetRequestCountsBefore(store.db, new Date(now).toISOString())
      }
      return { totalHits: await countRequest(store.db, keyOf(kind, address), resetTime.toISOString()), resetTime }
    },
    decrement: () => undefined,
    resetKey: () => undefined,
  })
}

// Hashed, so that the table does not say in clear who asked from where.
function keyOf(kind: string, address: string): string {
  return createHash('sha256').update(`${kind} ${address}`).digest('hex')
}
