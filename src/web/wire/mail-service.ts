import type { MailView } from '../../../shared/index.js'
import type { Reply } from './reply.js'
import { createSender } from './sender.js'

/** What the bench asks about letters. */
export interface MailService {
  mail(): Promise<Reply<MailView>>
  retryMail(mail: string): Promise<Reply<MailView>>
}

/** The routes about letters as functions, for our own pages only. */
export function createMailService(): MailService {
  const { get, post } = createSender({ base: '', credentials: 'same-origin' })
  return {
    mail: () => get('/api/mail'),
    retryMail: mail => post(`/api/mail/${encodeURIComponent(mail)}/retry`),
  }
}
