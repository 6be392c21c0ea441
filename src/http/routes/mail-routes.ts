import { MailView } from '../../../shared/index.js'
import { defineRoute, type Route } from '../route.js'

/** The letters that did not go out. */
export const mailRoutes: readonly Route[] = [
  defineRoute('GET', '/api/mail', {
    summary: 'Whether mail is sent, how much waits, and the letters that are stuck or fail.',
    reply: MailView,
    handle: ({ desk }) => desk.showMail(),
  }),
  defineRoute('POST', '/api/mail/:mail/retry', {
    summary: 'Tries a letter again at once.',
    reply: MailView,
    handle: ({ desk, part }) => desk.retryMail(part('mail')),
  }),
]
