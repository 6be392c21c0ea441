import { createHash } from 'node:crypto'

/**
 * The Message-ID of a letter (RFC 5322, section 3.6.4): the same at every try, so that a mailbox which got it twice can
 * see that it is one letter. It says nothing about what it was made from.
 * @param from the sender's address; its domain is the right-hand side
 */
export function messageIdFor(madeFrom: string, from: string): string {
  const left = createHash('sha256').update(madeFrom).digest('hex').slice(0, 32)
  return `<${left}@${from.slice(from.lastIndexOf('@') + 1).replace(/>$/, '')}>`
}
