import type { Reply } from '../wire/reply.js'

/** What went wrong, as a sentence for the screen; null when nothing did. */
export function inWords(reply: Reply<unknown>): string | null {
  if (reply.ok || reply.trouble.kind === 'stopped') return null
  if (reply.trouble.kind === 'refused') return reply.trouble.detail
  return (reply.trouble.kind === 'lost' ? reply.trouble.detail : null) ?? 'We cannot reach the service just now. Please try again.'
}
