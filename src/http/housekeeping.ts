import type { Logger } from 'pino'
import type { Desk } from '../desk/index.js'
import { runDuty, type Store } from '../store/index.js'
import { keepDoing, type Rounds } from './rounds.js'

/** How often the outbox is looked at, in milliseconds: a letter may wait this long, and looking costs one query. */
const MAIL_MS = 3_000
const SWEEP_MS = 15 * 60_000

/** What goes on beside the requests: letters are sent, and what nothing needs any more is swept away. */
export function startHousekeeping(desk: Desk, store: Store, clock: () => Date, log: Logger): Rounds {
  const rounds = [
    keepDoing('mail', async (stopped) => {
      await desk.sendDueMail(stopped)
      return MAIL_MS
    }, log),
    keepDoing('sweep', async () => {
      await runDuty(store, { name: 'sweep', everyMs: SWEEP_MS }, clock(), async () => {
        await desk.sweepPictures()
        await desk.forgetOldMail()
      })
      return SWEEP_MS
    }, log),
  ]
  return {
    async stop() {
      await Promise.all(rounds.map((one) => one.stop()))
    },
  }
}
