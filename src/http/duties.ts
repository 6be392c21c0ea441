import type { Logger } from 'pino'
import { runDuty, type Duty, type Store } from '../store/index.js'
import { STOP_PATIENCE_MS } from './rounds.js'
import { within } from './within.js'

/** A duty and how it is done. */
export interface ScheduledDuty extends Duty {
  /** Throws when it could not be done; it is tried again at its next time. */
  run(): Promise<void>
}

/** How often each process looks whether a duty is due, in milliseconds, unless it is due more often. */
const LOOK_MS = 60_000

/**
 * Sees to it that duties are done, each by one of the processes that run. Faults are logged. The result ends it, once
 * what is under way is done, or after so many milliseconds: a duty may be cut off at any place and is done again.
 */
export function keepDuties(
  duties: readonly ScheduledDuty[], store: Pick<Store, 'db' | 'exclusively'>, clock: () => Date, log: Logger, patienceMs = STOP_PATIENCE_MS,
): () => Promise<void> {
  const underWay = new Set<Promise<void>>()
  const timers = duties.map((duty) => {
    let isBusy = false
    const look = async (): Promise<void> => {
      if (isBusy) return
      isBusy = true
      try {
        await runDuty(store, duty, clock(), () => duty.run())
      } catch (fault) {
        log.error({ err: fault, duty: duty.name }, 'a duty could not be done')
      } finally {
        isBusy = false
      }
    }
    return setInterval(() => {
      const looking = look()
      underWay.add(looking)
      void looking.finally(() => underWay.delete(looking))
    }, Math.min(LOOK_MS, Math.max(duty.everyMs, 50))).unref()
  })
  return async () => {
    for (const timer of timers) clearInterval(timer)
    await within(Promise.all(underWay), patienceMs).catch(() => undefined)
  }
}
