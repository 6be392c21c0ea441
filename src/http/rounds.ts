import type { Logger } from 'pino'
import { within } from './within.js'

/** How long the end of the service waits for work that goes on beside the requests, in milliseconds. */
export const STOP_PATIENCE_MS = 10_000

/** Something that is done again and again while the service runs. */
export interface Rounds {
  /**
   * Does no more rounds; resolves when the one under way has ended, or after ten seconds: a round may be cut off at any
   * place, and a slow mail server should not hold up the end of the service.
   */
  stop(): Promise<void>
}

/**
 * Does rounds of work, never two at once. A round says how many milliseconds to wait until the next. One that fails is
 * logged and does not end the others.
 */
export function keepDoing(
  name: string, round: (stopped: () => boolean) => Promise<number>, log: Logger, afterFaultMs = 30_000,
): Rounds {
  let stopping = false
  let wake: () => void = () => undefined
  const rounds = (async () => {
    while (!stopping) {
      const waitMs = await round(() => stopping).catch((fault: unknown) => {
        log.error({ err: fault, round: name }, 'a round of work failed')
        return afterFaultMs
      })
      if (stopping) return
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, waitMs)
        wake = () => {
          clearTimeout(timer)
          resolve()
        }
      })
    }
  })()
  return {
    stop() {
      stopping = true
      wake()
      return within(rounds, STOP_PATIENCE_MS).catch(() => undefined)
    },
  }
}
