import type { Response } from 'express'

/** What is frozen is the same the next time, so what is sent of it is. */
const kept = new WeakMap<object, string>()

/**
 * Ends a response with JSON. What is sent of a frozen reply is kept as long as the reply is: writing a case out takes longer
 * than finding it. Without an entity tag, as nobody may keep what we answer (`no-store`).
 *
 * What is sent is UTF-8, held as text with one character a byte: such text goes out in one piece with the headers, and
 * needs no turning into bytes at each writing.
 */
export function sendJson(response: Response, reply: unknown): void {
  const sent = written(reply)
  response.setHeader('content-type', 'application/json; charset=utf-8')
  response.setHeader('content-length', sent.length)
  response.end(sent, 'latin1')
}

function written(reply: unknown): string {
  const isLasting = typeof reply === 'object' && reply !== null && Object.isFrozen(reply)
  const known = isLasting ? kept.get(reply) : undefined
  if (known !== undefined) return known
  const sent = Buffer.from(JSON.stringify(reply)).toString('latin1')
  if (isLasting) kept.set(reply, sent)
  return sent
}
