import type { Logger } from 'pino'
import type { Desk } from '../desk/index.js'
import { keepDoing, type Rounds } from './rounds.js'

/** How often the outbox is looked at, in milliseconds: a letter may wait this long, and looking costs one query. */
const MAIL_MS = 3_000

/** Sends due letters while the service runs. No duty: every process may send, each letter claimed by one of them. */
export function keepSendingMail(desk: Pick<Desk, 'sendDueMail'>, log: Logger): Rounds {
  return keepDoing('mail', async (stopped) => {
    await desk.sendDueMail(stopped)
    return MAIL_MS
  }, log)
}
