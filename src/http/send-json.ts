import type { Response } from 'express'

/** What is frozen is the same the next time, so its text is. */
const texts = new WeakMap<object, { readonly text: string; readonly bytes: number }>()

/**
 * Ends a response with JSON. The text of a frozen reply is kept as long as the reply is: writing a case out takes longer
 * than finding it. Without an entity tag, as nobody may keep what we answer (`no-store`).
 */
export function sendJson(response: Response, reply: unknown): void {
  const { text, bytes } = written(reply)
  response.setHeader('content-type', 'application/json; charset=utf-8')
  response.setHeader('content-length', bytes)
  response.end(text)
}

function written(reply: unknown): { readonly text: string; readonly bytes: number } {
  const isLasting = typeof reply === 'object' && reply !== null && Object.isFrozen(reply)
  const known = isLasting ? texts.get(reply) : undefined
  if (known !== undefined) return known
  const text = JSON.stringify(reply)
  const fresh = { text, bytes: Buffer.byteLength(text) }
  if (isLasting) texts.set(reply, fresh)
  return fresh
}
