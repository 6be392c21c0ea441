import type { Response } from 'express'

/** What is frozen is the same the next time, so its bytes are. */
const kept = new WeakMap<object, Buffer>()

/**
 * Ends a response with JSON. The bytes of a frozen reply are kept as long as the reply is: writing a case out takes longer
 * than finding it. Bytes and not text, which Node would turn into bytes at each writing, and slowly where it is long.
 * Without an entity tag, as nobody may keep what we answer (`no-store`).
 */
export function sendJson(response: Response, reply: unknown): void {
  const bytes = written(reply)
  response.setHeader('content-type', 'application/json; charset=utf-8')
  response.setHeader('content-length', bytes.length)
  response.end(bytes)
}

function written(reply: unknown): Buffer {
  const isLasting = typeof reply === 'object' && reply !== null && Object.isFrozen(reply)
  const known = isLasting ? kept.get(reply) : undefined
  if (known !== undefined) return known
  const bytes = Buffer.from(JSON.stringify(reply))
  if (isLasting) kept.set(reply, bytes)
  return bytes
}
