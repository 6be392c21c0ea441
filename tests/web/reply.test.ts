import { describe, expect, it } from 'vitest'
import { readReply } from '../../src/web/wire/reply.js'

const problem = (status: number, body: object) => new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/problem+json' } })

describe('reading a reply', () => {
  it('gives the value of a good one', async () => {
    expect(await readReply(new Response('{"a":1}'))).toEqual({ ok: true, value: { a: 1 } })
  })

  it('keeps what the service says when it is asked too often, and counts it as worth another try', async () => {
    const detail = 'There were too many failed sign-ins. Wait 30 seconds and try again.'
    expect(await readReply(problem(429, { code: 'SIGN_IN_PAUSED', detail }))).toEqual({ ok: false, trouble: { kind: 'lost', detail } })
  })

  it('makes do without words when a proxy in between answers with a page of its own', async () => {
    for (const status of [429, 502, 503]) {
      expect(await readReply(new Response('<h1>Busy</h1>', { status }))).toEqual({ ok: false, trouble: { kind: 'lost', detail: null } })
    }
  })

  it('tells a refusal with its code and its words', async () => {
    expect(await readReply(problem(401, { code: 'SIGN_IN_FAILED', detail: 'Check both.' })))
      .toEqual({ ok: false, trouble: { kind: 'refused', status: 401, code: 'SIGN_IN_FAILED', detail: 'Check both.' } })
  })
})
